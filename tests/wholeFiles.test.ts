/**
 * Files are written whole: whatever write fails, and on a full disk, each target keeps its old bytes or has its new ones,
 * and nothing else is left beside it. What is no regular file is refused at once.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import type * as promises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type * as halfcup from './support/halfcup.ts';
import { OLD, WRITING_CALLS, filesIn, filledFolder } from './support/writing.ts';

/** Failures of each call: as many as a person waits for while writing; more in continuous integration. */
const FAILURES = process.env['CI'] === undefined ? 15 : 50;
/** What a disk, a quota and a device say that can take no more. */
const SAID: Readonly<Record<string, RegExp>> = {
  ENOSPC: /the disk is full/u,
  EDQUOT: /quota/u,
  EIO: /the file cannot be used \(EIO\)/u,
  EROFS: /read-only/u,
};
const CODES = ['ENOSPC', 'EDQUOT', 'EIO', 'EROFS'] as const;

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
      // Whoever writes says how by a text.
      if (args[1] === 'r' || typeof args[1] !== 'string') return real.open(...args);
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

let folder = '';
let halfcupIn: typeof halfcup.halfcupIn;
// Files share their modules: those read before with the real file system are read anew, and after with the real one again.
beforeAll(async () => {
  vi.resetModules();
  ({ halfcupIn } = await import('./support/halfcup.ts'));
  folder = mkdtempSync(join(tmpdir(), 'halfcup-whole-'));
});
afterAll(() => {
  vi.resetModules();
  rmSync(folder, { recursive: true, force: true });
});

/** As `filledFolder`, in the folder of this file. */
const fresh = (kept: boolean): string => filledFolder(folder, kept);

describe.each(WRITING_CALLS)('%s', (_title, call) => {
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
      for (let failure = 0; failure < FAILURES; failure++) {
        const at = (failure % writes) + 1;
        failing.code = CODES[Math.floor(failure / writes) % CODES.length]!;
        const own = fresh(kept);
        const before = filesIn(own);
        [failing.at, failing.count] = [at, 0];
        const { exit, err } = await halfcupIn(own, ...call);
        failing.at = 0;
        expect(exit, `write ${at}`).toBe(2);
        expect(err).toMatch(SAID[failing.code]!);
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
