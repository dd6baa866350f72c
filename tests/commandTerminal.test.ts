/** What people see in a terminal: it fits, nothing is lost at any width, and only headings and severities have colours. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { type Ended, folderWith, halfcupWith } from './support/halfcup.ts';

const FIXTURES = join(ROOT, 'fixtures');
const DEMO = join(FIXTURES, 'demo');

const shown = async (columns: number, folder: string, args: readonly string[]): Promise<Ended> =>
  halfcupWith({ terminal: { isTTY: true, columns }, env: { NO_COLOR: '1' } }, folder, ...args);

/** Every word, once, in no order: where lines break must change none. */
const wordsOf = (text: string): string[] => [...new Set(text.split(/\s+/u))].sort();

const CALLS: readonly (readonly [folder: string, ...args: readonly string[]])[] = [
  ...readdirSync(FIXTURES).flatMap((name) =>
    existsSync(join(FIXTURES, name, 'plan.json'))
      ? [[join(FIXTURES, name), 'layout', 'plan.json'] as const, [join(FIXTURES, name), 'review', 'plan.json'] as const]
      : [],
  ),
  [DEMO, 'layout', 'plan.json', '--units', 'imperial'],
  [DEMO, 'raceday', 'plan.json'],
  [DEMO, 'raceday', 'plan.json', '--units', 'imperial'],
  [DEMO, 'raceday', 'plan.json', '--learn'],
  [DEMO, 'review', 'plan.json', '--all'],
  [DEMO, 'compare', 'plan.json', 'Lighthouse table moved'],
  [DEMO, 'improve', 'plan.json', '--only', 's7,s8'],
  [DEMO, 'course', 'full.gpx'],
  [DEMO, 'snap', 'full.gpx', '-17.3864922,-33.2319296', '-17.44,-33.19'],
];

describe('a text for people', () => {
  it.each(CALLS.map(([folder, ...args]) => [folder.slice(FIXTURES.length + 1), args.join(' '), folder, args] as const))(
    'fits a terminal of 80 and of 140 columns and says the same on both: %s %s',
    async (_, __, folder, args) => {
      const [narrow, wide] = [await shown(80, folder, args), await shown(140, folder, args)];
      for (const [{ out }, width] of [
        [narrow, 80],
        [wide, 140],
      ] as const) {
        const broken = out
          .split('\n')
          .filter((line) => stringWidth(line) > width && !/^\s*(?:"take"|.* [\da-f]{64}$)/u.test(line));
        expect(broken).toEqual([]);
      }
      expect(wordsOf(narrow.out)).toEqual(wordsOf(wide.out));
    },
  );

  it('has colours for headings and severities only, in a terminal', async () => {
    const call = ['review', 'plan.json'] as const;
    const terminal = { isTTY: true, columns: 140 };
    const { out } = await halfcupWith({ terminal }, DEMO, ...call);
    const plain = await halfcupWith({ terminal, env: { NO_COLOR: '1' } }, DEMO, ...call);
    // oxlint-disable-next-line no-control-regex -- the escapes of a terminal are what is looked for.
    const painted = [...out.matchAll(/(?:\u001B\[\d+m)+([^\u001B]+)(?:\u001B\[\d+m)+/gu)].map(([, text]) => text);
    expect(painted).toEqual([plain.out.split('\n')[0], 'Errors', 'Warnings', 'Notes']);
    // oxlint-disable-next-line no-control-regex -- the escapes of a terminal are what is looked for.
    expect(out.replaceAll(/\u001B\[\d+m/gu, '')).toBe(plain.out);
    expect((await halfcupWith({}, DEMO, ...call)).out).toBe(plain.out);
  });

  it('has none in a document or a file, even where they are forced', async () => {
    const env = { FORCE_COLOR: '1' };
    expect((await halfcupWith({ env }, DEMO, 'review', 'plan.json', '--json')).out).not.toContain('\u001B');
    const folder = folderWith({});
    await halfcupWith({ env }, folder, 'review', join(DEMO, 'plan.json'), '--out', 'review.txt');
    expect(readFileSync(join(folder, 'review.txt'), 'utf8')).toMatch(/^Errors$/mu);
    expect((await halfcupWith({ env }, DEMO, 'review', 'none.json')).err).toBe(
      'none.json: \u001B[1m\u001B[31merror:\u001B[39m\u001B[22m file not found; check the name or the folder\n',
    );
  });
});
