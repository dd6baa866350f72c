/** README's commands and its example run as they are written. */
import { segmentLength } from '@halfcup/core/geometry';
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { halfcupIn, halfcupProcess } from './support/halfcup.ts';

const README = readFileSync(join(ROOT, 'README.md'), 'utf8');
const PREFIX = 'npx halfcup ';
const commands = README.split('\n')
  .filter((line) => line.startsWith(PREFIX))
  .map((line) => line.slice(PREFIX.length));
const example = /```js\n(?<code>[\s\S]*?)```/u.exec(README)?.groups?.['code'] ?? '';
const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain ?? '');

describe('README', () => {
  it('has commands and an example', () => {
    expect(commands.length).toBeGreaterThan(5);
    expect(example).toContain('passesOf');
  });

  it('lists the checks that there are', () => {
    const { status, stderr } = spawnSync(process.execPath, ['scripts/figures.mjs', '--check'], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(status, stderr).toBe(0);
  });

  it.each(commands)('%s', async (line) => {
    const { exit, out, err } = await halfcupIn(ROOT, ...words(line));
    // A review ends with 1 where an error stands, as one does in the demo.
    expect(exit, err).toBe(line.startsWith('review') ? 1 : 0);
    expect(out.length).toBeGreaterThan(100);
  });

  it('names a way to run the command in this folder that is there, and so is the script of the workspace', () => {
    const run = (command: string, ...args: readonly string[]): string =>
      spawnSync(command, args, { cwd: ROOT, encoding: 'utf8' }).stdout;
    const version = halfcupProcess(ROOT, '--version').out;
    expect(run(join(ROOT, 'node_modules/.bin/halfcup'), '--version')).toBe(version);
    expect(run('npm', 'run', '--silent', 'halfcup', '--', '--version')).toBe(version);
  });

  it('shows what the command prints', async () => {
    const [, shown] = /The second call above prints:\n\n```\n([\s\S]*?)```/u.exec(README) ?? [];
    expect((await halfcupIn(ROOT, ...words(commands[1]!))).out).toBe(shown);
  });

  it('has an example that type-checks strictly', () => {
    const file = join(ROOT, 'readme-example-types.mts');
    writeFileSync(file, example);
    try {
      const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
      const flags = [
        '--noEmit',
        '--strict',
        '--exactOptionalPropertyTypes',
        '--noUncheckedIndexedAccess',
        '--module',
        'nodenext',
        '--target',
        'es2023',
        '--types',
        'node',
        '--ignoreConfig',
      ];
      const { status, stdout, stderr } = spawnSync(process.execPath, [tsc, ...flags, file], {
        cwd: ROOT,
        encoding: 'utf8',
      });
      expect(status, stdout + stderr).toBe(0);
    } finally {
      rmSync(file);
    }
  });

  it('of the package has an example that finds what it says', () => {
    const text = readFileSync(join(ROOT, 'packages/core/README.md'), 'utf8');
    const code = /```js\n(?<code>[\s\S]*?)```/u.exec(text)?.groups?.['code'] ?? '';
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', code], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(status, stderr).toBe(0);
    // 0.00005° of latitude are 5.5 m; a pass on the way out mirrors that on the way home.
    expect(
      stdout
        .trim()
        .split('\n')
        .map((line) => line.split(' ')),
    ).toEqual([
      [expect.any(String), '-5.5', 'right'],
      [expect.any(String), '5.5', 'left'],
    ]);
    const [out, home] = stdout
      .trim()
      .split('\n')
      .map((line) => Number(line.split(' ')[0]));
    expect(out! + home!).toBeCloseTo(2 * segmentLength(-17.4, -33.2, -17.38, -33.2), 0);
  });

  it('of the package comes from GPX bytes to a pass in three lines, and reviews a plan in one call', async () => {
    const text = readFileSync(join(ROOT, 'packages/core/README.md'), 'utf8');
    const demo = join(ROOT, 'fixtures/demo');
    const [first, second, ...more] = [...text.matchAll(/```mjs\n([\s\S]*?)```/gu)].map(([, code]) => code!);
    expect(more).toEqual([]);
    const [, body] = first!.split('\n\n');
    expect(body!.trim().split('\n')).toHaveLength(3);
    const printed = (code: string): string => {
      const all = `import { readFile } from 'node:fs/promises';\nprocess.chdir(${JSON.stringify(demo)});\n${code}`;
      const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', all], {
        cwd: ROOT,
        encoding: 'utf8',
      });
      expect(status, stderr).toBe(0);
      return stdout;
    };
    const snap = await halfcupIn(demo, 'snap', 'full.gpx', '-17.3864922,-33.2319296', '--json');
    const { points } = JSON.parse(snap.out) as { points: { passes: { measure: number }[] }[] };
    expect(Number(/measure: ([\d.]+)/u.exec(printed(first!))![1])).toBeCloseTo(points[0]!.passes[0]!.measure, 2);
    const lines = printed(second!).trim().split('\n');
    const review = JSON.parse((await halfcupIn(demo, 'review', 'plan.json', '--json')).out) as { findings: object[] };
    expect(lines).toHaveLength(review.findings.length);
    expect(lines.every((line) => line.startsWith('plan.json:'))).toBe(true);
  });

  it('shows a point that the course runs by, and a library example that finds the same two passes', async () => {
    const snap = commands.find((line) => line.startsWith('snap'))!;
    expect((await halfcupIn(ROOT, ...words(snap))).out).toContain('2 of 2');
    const file = join(ROOT, 'readme-example.mjs');
    writeFileSync(file, example);
    try {
      const { status, stdout, stderr } = spawnSync(process.execPath, [file], { cwd: ROOT, encoding: 'utf8' });
      expect(status, stderr).toBe(0);
      expect(stdout.match(/measure: /gu)).toHaveLength(2);
    } finally {
      rmSync(file);
    }
  });
});
