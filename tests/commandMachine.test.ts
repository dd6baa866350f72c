/** The command line for other programs: problems as JSON, standard input as a file, schemas of what it reads and prints. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingSchema, layoutSchema, planJsonSchema, raceDaySchema, reviewSchema } from '@halfcup/core/schemas';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { MAIN, folderWith, halfcupIn, halfcupWith, refusalIn } from './support/halfcup.ts';

const demo = join(ROOT, 'fixtures/demo');
const plan = readFileSync(join(demo, 'plan.json'), 'utf8');
const full = readFileSync(join(demo, 'full.gpx'));
const folder = folderWith({ 'broken.json': '{ "format": "halfcup-plan",, }' });
const isFinding = new Ajv2020({ strict: false }).compile(findingSchema);

describe('a refused call with --json', () => {
  it.each([
    ['a file that is not there', ['layout', 'none.json'], 'file-unreadable'],
    ['a plan that is broken', ['review', 'broken.json'], 'plan-not-json'],
    ['an option that is not known', ['layout', 'broken.json', '--colour'], 'call'],
    ['no argument', ['raceday'], 'call'],
    ['no such command', ['lay-out'], 'call'],
  ])('has its problems on stderr as one line of JSON, and nothing on stdout: %s', async (_, args, code) => {
    const { exit, out, err } = await halfcupIn(folder, ...args, '--json');
    expect([exit, out]).toEqual([2, '']);
    expect(err.endsWith('\n') && err.trimEnd().split('\n')).toHaveLength(1);
    const { problems, ...rest } = JSON.parse(err) as { problems: { code: string }[] };
    expect(rest).toEqual({});
    expect(problems.length).toBeGreaterThan(0);
    for (const problem of problems) expect(isFinding(problem), JSON.stringify(isFinding.errors)).toBe(true);
    expect(problems[0]!.code).toBe(code);
  });

  it('has their places apart', async () => {
    const { err } = await halfcupIn(folder, 'review', 'broken.json', '--json');
    const [problem] = (JSON.parse(err) as { problems: { where: object }[] }).problems;
    expect(problem!.where).toEqual({ file: 'broken.json', line: 1, column: 28 });
  });

  it('without it has them as lines for people', async () => {
    expect(await refusalIn(folder, 'review', 'broken.json')).toEqual([
      expect.stringMatching(/^broken\.json:1:28: error: /u),
    ]);
  });
});

describe('standard input', () => {
  it('named - is the plan, beside files of this folder, and the course', async () => {
    for (const args of [
      ['layout', '--json'],
      ['raceday', '--json'],
      ['review', '--all'],
      ['review', '--json'],
    ]) {
      const [command, ...options] = args as [string, ...string[]];
      const named = await halfcupIn(demo, command, 'plan.json', ...options);
      const piped = await halfcupWith({ stdin: plan }, demo, command, '-', ...options);
      // A longer name breaks lines elsewhere.
      const text = piped.out.replaceAll('"-"', '"plan.json"').replaceAll(/(?<=\s)-(?=:\d)/gu, 'plan.json');
      expect(text.replaceAll(/\s+/gu, ' ')).toBe(named.out.replaceAll(/\s+/gu, ' '));
      expect(piped.exit).toBe(named.exit);
    }
    const facts = await halfcupIn(demo, 'course', 'full.gpx', '--json');
    expect(
      (await halfcupWith({ stdin: full }, demo, 'course', '-', '--json')).out.replaceAll('"-"', '"full.gpx"'),
    ).toBe(facts.out);
  });

  it('is read by the real program too, and its problems are told under that name', () => {
    const run = (input: string): { status: number | null; stdout: string; stderr: string } =>
      spawnSync(process.execPath, [MAIN, 'layout', '-', '--json'], { cwd: demo, encoding: 'utf8', input });
    const { status, stdout } = run(plan);
    expect([status, stdout.length > 1000]).toEqual([0, true]);
    const broken = run('{');
    expect([broken.status, broken.stdout]).toEqual([2, '']);
    expect(JSON.parse(broken.stderr)).toMatchObject({ problems: [{ where: { file: '-', line: 1 } }] });
  });

  it('is one plan: not one of a list', async () => {
    const { exit, err } = await halfcupWith({ stdin: plan }, demo, 'review', '-', 'plan.json', '--json-lines');
    expect([exit, err]).toEqual([2, expect.stringContaining('standard input is one plan')]);
  });
});

describe('halfcup schema', () => {
  it.each<[string, object]>([
    ['plan', planJsonSchema()],
    ['finding', findingSchema],
    ['layout', layoutSchema],
    ['raceday', raceDaySchema],
    ['review', reviewSchema],
  ])('prints that of %s, which holds what it is of', async (name, schema) => {
    const { exit, out } = await halfcupIn(demo, 'schema', name);
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toEqual(schema);
    if (name === 'finding') return;
    const text = name === 'plan' ? plan : (await halfcupIn(demo, name, 'plan.json', '--json')).out;
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(out) as object);
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
  });

  it('names the known ones where there is none of that name', async () => {
    const [line] = await refusalIn(demo, 'schema', 'layuot');
    expect(line).toBe('halfcup: error: there is no schema "layuot"; did you mean "layout"?');
  });
});
