/** Help: every command has all its parts, and every example works on the demo. */
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../packages/core/cli/commands.ts';
import { ROOT } from './support/build.ts';
import { folderWith, halfcupIn, halfcupWith } from './support/halfcup.ts';

const folder = folderWith({});
const demo = folderWith({});
cpSync(join(ROOT, 'fixtures/demo'), demo, { recursive: true });

const helpOf = async (name: string): Promise<string> => (await halfcupIn(folder, name, '--help')).out;
const examplesIn = (help: string): string[] =>
  [...help.matchAll(/^ {2}npx halfcup (.+)$/gmu)].map(([, example]) => example!);
const words = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain ?? '');

const examples = (
  await Promise.all(COMMANDS.map(async ({ name }) => examplesIn(await helpOf(name)).map((example) => [example])))
).flat();

describe('help', () => {
  it.each(COMMANDS.map(({ name }) => name))(
    'of %s says how it is used, with two examples, and no heading is empty',
    async (name) => {
      const help = await helpOf(name);
      expect(help).toMatch(new RegExp(`^Usage: npx halfcup ${name} .*\\[OPTIONS\\]\n\n[A-Z]`, 'u'));
      for (const heading of ['Arguments:', 'Options of all commands:', 'Examples:', 'Exit status:'])
        expect(help).toMatch(new RegExp(`^${heading}\n {2}\\S`, 'mu'));
      for (const [, next] of help.matchAll(/^[A-Z][\w ]+:\n(.*)$/gmu)) expect(next).toMatch(/^ {2}\S/u);
      expect(examplesIn(help).length).toBeGreaterThanOrEqual(2);
    },
  );

  it.each([60, 80, 140])('fits %i columns, save for examples', async (columns) => {
    for (const args of [['--help'], ...COMMANDS.map(({ name }) => [name, '--help'])]) {
      const { out } = await halfcupWith(
        { terminal: { isTTY: true, columns }, env: { NO_COLOR: '1' } },
        folder,
        ...args,
      );
      const long = out.split('\n').filter((line) => line.length > columns && !line.startsWith('  npx halfcup '));
      expect(long).toEqual([]);
    }
  });

  it.each(examples)('has an example that works: halfcup %s', async (example) => {
    const { exit, out, err } = await halfcupIn(demo, ...words(example), '--force');
    // The demo has an error that is not waived.
    expect(exit, err).toBe(example.startsWith('review') ? 1 : 0);
    expect(example.includes('--out ') || out.length > 100).toBe(true);
  });

  it('has examples of its own that work', async () => {
    const overall = examplesIn((await halfcupIn(folder, '--help')).out);
    expect(overall.length).toBeGreaterThanOrEqual(2);
    for (const example of overall) expect((await halfcupIn(demo, ...words(example), '--force')).exit).toBeLessThan(2);
  });
});
