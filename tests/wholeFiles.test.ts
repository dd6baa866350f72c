/**
 * Files are written whole: whatever write fails, and on a full disk, each target keeps its old bytes or has its new ones,
 * and nothing else is left beside it. What is no regular file is refused at once.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import type * as promises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { halfcupIn } from './support/halfcup.ts';

const plan = (name: string): string =>
  JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    name,
    courses: [
      {
        id: 'c',
        line: [
          [-17.4, -33.2],
          [-17.3, -33.2],
        ],
        drawn: 'centre',
      },
    ],
    races: [
      { id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 300 }], finish: { median: '45 min', spread: 0.2 } },
    ],
    stations: [{ id: 's1', on: { course: 'c', measure: '3 km', side: 'right' } }],
  });

/** Which of the calls that write is the one to fail; none where it is 0. */
const failing = vi.hoisted(() => ({ at: 0, count: 0, code: 'ENOSPC' }));

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof promises>();
  const turn = (): void => {
    failing.count += 1;
    if (failing.count === failing.at) throw Object.assign(new Error('made to fail'), { code: failing.code });
  };
  return {
    ...real,
    rename: async (...args: Parameters<typeof real.rename>) => (turn(), real.rename(...args)),
    link: async (...args: Parameters<typeof real.link>) => (turn(), real.link(...args)),
    open: async (...args: Parameters<typeof real.open>) => {
      if (args[1] === 'r' || args[1] === undefined) return real.open(...args);
      turn();
      const handle = await real.open(...args);
      return new Proxy(handle, {
        get(target, key) {
          const value: unknown = Reflect.get(target, key, target);
          if (typeof value !== 'function') return value;
          if (key === 'writeFile' || key === 'appendFile' || key === 'sync')
            return async (...given: unknown[]) => (turn(), Reflect.apply(value, target, given) as unknown);
          return (...given: unknown[]) => Reflect.apply(value, target, given) as unknown;
        },
      });
    },
  };
});

const OLD = 'old bytes\n';
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfcup-whole-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder with two plans, and every target there already with old bytes where `kept`. */
function fresh(kept: boolean): string {
  const own = mkdtempSync(join(folder, 'case-'));
  writeFileSync(join(own, 'p.json'), plan('Quay run'));
  writeFileSync(join(own, 'q.json'), plan('Mole run'));
  writeFileSync(
    join(own, 'c.gpx'),
    `<gpx version="1.1" creator="t"><trk><trkseg>${[0, 1, 2].map((k) => `<trkpt lat="-33.2" lon="${-17.4 + k / 100}"/>`).join('')}</trkseg></trk></gpx>`,
  );
  if (!kept) return own;
  writeFileSync(join(own, 'out.file'), OLD);
  writeFileSync(join(own, 'out.html'), OLD);
  mkdirSync(join(own, 'papers'));
  for (const name of ['index.html', 'overview.html', 'captains.html']) writeFileSync(join(own, 'papers', name), OLD);
  return own;
}

const CALLS: readonly (readonly [title: string, call: readonly string[]])[] = [
  ['export --out', ['export', 'p.json', '--to', 'csv', '--out', 'out.file', '--force']],
  ['review --report', ['review', 'p.json', '--report', 'out.html', '--force']],
  ['sheets --out', ['sheets', 'p.json', '--out', 'papers', '--force']],
  ['start --out', ['start', 'New', 'c.gpx', '--every', '1km', '--out', 'out.file', '--force']],
  [
    'review --json-lines --out',
    ['review', 'p.json', 'q.json', '--json-lines', '--workers', '1', '--out', 'out.file', '--force'],
  ],
];

const filesIn = (path: string): string[] => readdirSync(path, { recursive: true }).map(String).toSorted();

describe.each(CALLS)('%s', (_title, call) => {
  it.each([true, false])(
    'keeps old bytes or has new ones at each failing write, and leaves nothing else: targets there %s',
    async (kept) => {
      failing.at = 0;
      const good = fresh(kept);
      failing.count = 0;
      const done = await halfcupIn(good, ...call);
      expect(done.exit, done.err).toBeLessThan(2);
      const writes = failing.count;
      expect(writes).toBeGreaterThan(2);
      const whole = new Map(
        filesIn(good)
          .filter((name) => /\.(?:file|html)$/u.test(name))
          .map((name) => [name, readFileSync(join(good, name), 'utf8').length]),
      );
      const known = new Set([...filesIn(fresh(kept)), ...whole.keys(), 'papers']);
      for (let at = 1; at <= Math.min(writes, 25); at++) {
        const own = fresh(kept);
        const before = filesIn(own);
        [failing.at, failing.count] = [at, 0];
        const { exit, err } = await halfcupIn(own, ...call);
        failing.at = 0;
        expect(exit, `write ${at}`).toBe(2);
        expect(err).toContain('the disk is full');
        const after = filesIn(own);
        expect(
          after.filter((name) => !known.has(name)),
          `write ${at}`,
        ).toEqual([]);
        for (const name of after.filter((one) => whole.has(one))) {
          const text = readFileSync(join(own, name), 'utf8');
          expect(
            text === OLD || text.length === whole.get(name),
            `write ${at}: ${name} has ${text.length} characters`,
          ).toBe(true);
        }
        // Nothing that was there is gone.
        expect(before.filter((name) => !after.includes(name))).toEqual([]);
      }
    },
  );
});

it('writes through a link, and keeps it a link', async () => {
  const own = fresh(true);
  symlinkSync('out.file', join(own, 'link'));
  expect((await halfcupIn(own, 'export', 'p.json', '--to', 'csv', '--out', 'link', '--force')).exit).toBe(0);
  expect(readFileSync(join(own, 'out.file'), 'utf8')).not.toBe(OLD);
  expect(filesIn(own).filter((name) => name.includes('.part'))).toEqual([]);
});

it('refuses pipes and devices at once, for reading and for writing', async () => {
  const own = fresh(false);
  execFileSync('mkfifo', [join(own, 'pipe')]);
  for (const name of ['pipe', '/dev/zero']) {
    const read = await halfcupIn(own, 'review', name);
    expect(read.exit).toBe(2);
    expect(read.err).toContain('this is a pipe, a device or a socket');
    const gpx = await halfcupIn(own, 'course', name);
    expect(gpx.err).toContain('this is a pipe, a device or a socket');
    const write = await halfcupIn(own, 'export', 'p.json', '--to', 'csv', '--out', name, '--force');
    expect(write.exit).toBe(2);
    expect(write.err).toContain('this is a pipe, a device or a socket');
  }
});

it('takes away what is half written where the process is told to end', () => {
  const own = fresh(false);
  const run = spawnSync(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      `import { beginFile, dropAll } from ${JSON.stringify(join(import.meta.dirname, '../packages/core/dist/cli/wholeFile.js'))};
       const { handle } = await beginFile('x.txt', false); await handle.writeFile('half'); await dropAll();`,
    ],
    { cwd: own },
  );
  expect(run.status, String(run.stderr)).toBe(0);
  expect(existsSync(join(own, 'x.txt'))).toBe(false);
  expect(filesIn(own).filter((name) => name.includes('.part'))).toEqual([]);
});
