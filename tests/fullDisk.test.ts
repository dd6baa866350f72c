/**
 * Full disks: every call that writes, on disks of 200 kB with ever less room. Each target keeps its old bytes or has its new
 * ones, and nothing else is left. The disk is a tmpfs where something may be mounted (as root, which continuous integration
 * is); elsewhere it is made up: writes go through, byte by byte, until the room is used up, and then fail as a full disk does.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import type * as promises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type * as halfcup from './support/halfcup.ts';
import { OLD, WRITING_CALLS, filesIn, filledFolder } from './support/writing.ts';

const PAGE = 4096;
const SIZE = 200 * 1024;
/** Room that is left, in pages of the system; the last is enough for most. */
const ROOM = [0, 1, 2, 3, 5, 8, 12, 20, 30, 45] as const;

/** Bytes that may still be written on the disk that is made up. */
const made = vi.hoisted(() => ({ left: Infinity }));

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof promises>();
  const full = (): Error => Object.assign(new Error('made up'), { code: 'ENOSPC' });
  return {
    ...real,
    open: async (...args: Parameters<typeof real.open>) => {
      const handle = await real.open(...args);
      if (typeof args[1] !== 'string' || made.left === Infinity) return handle;
      const write = async (text: string): Promise<void> => {
        const bytes = Buffer.from(text);
        const room = Math.min(bytes.length, made.left);
        made.left -= room;
        await handle.write(bytes.subarray(0, room));
        if (room < bytes.length) throw full();
      };
      return new Proxy(handle, {
        get(target, key) {
          const value: unknown = Reflect.get(target, key, target);
          if (key === 'writeFile' || key === 'appendFile') return write;
          return typeof value === 'function' ? value.bind(target) : value;
        },
      });
    },
  };
});

let base = '';
let disk = '';
let halfcupIn: typeof halfcup.halfcupIn;
const sandbox = mkdtempSync(join(tmpdir(), 'halfcup-disk-'));
const mounted =
  spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${SIZE}`, 'tmpfs', sandbox], { stdio: 'ignore' }).status === 0;
if (!mounted) console.warn('fullDisk.test.ts: nothing may be mounted here, so that the full disks are made up.');

beforeAll(async () => {
  vi.resetModules();
  ({ halfcupIn } = await import('./support/halfcup.ts'));
  base = mkdtempSync(join(tmpdir(), 'halfcup-full-'));
  disk = sandbox;
});
afterAll(() => {
  vi.resetModules();
  if (mounted) spawnSync('umount', [sandbox]);
  rmSync(sandbox, { recursive: true, force: true });
  rmSync(base, { recursive: true, force: true });
});

/** Fills the disk but for so many bytes. */
function fill(left: number): void {
  if (!mounted) {
    made.left = left;
    return;
  }
  const ballast = join(disk, 'ballast');
  try {
    writeFileSync(ballast, Buffer.alloc(SIZE));
  } catch {
    // As full as it gets.
  }
  truncateSync(ballast, statSync(ballast).size - left);
}

function empty(): void {
  made.left = Infinity;
  for (const name of filesIn(disk)) rmSync(join(disk, name), { recursive: true, force: true });
}

const TARGET = /^(?:out\.(?:file|html)|papers(?:\/.*)?)$/u;

describe.each(WRITING_CALLS)(`%s on ${mounted ? 'a tmpfs' : 'made-up disks'} of 200 kB`, (_title, call) => {
  it('keeps old bytes or has new ones, however little room there is', async () => {
    const good = filledFolder(base, true);
    expect((await halfcupIn(good, ...call)).exit).toBeLessThan(2);
    const whole = new Map(
      filesIn(good)
        .filter((name) => /\.(?:file|html)$/u.test(name))
        .map((name) => [name, readFileSync(join(good, name), 'utf8')]),
    );
    let refused = 0;
    for (const pages of ROOM) {
      const own = filledFolder(disk, true);
      const before = filesIn(own);
      fill(pages * PAGE);
      const { exit, err } = await halfcupIn(own, ...call);
      made.left = Infinity;
      const what = `${pages} pages of room`;
      if (exit === 2) {
        refused += 1;
        expect(err, what).toContain('the disk is full');
      }
      const after = filesIn(own);
      expect(after.filter((name) => !before.includes(name) && !TARGET.test(name)), what).toEqual([]); // prettier-ignore
      expect(before.filter((name) => !after.includes(name)), what).toEqual([]); // prettier-ignore
      for (const name of after.filter((one) => whole.has(one)))
        expect([OLD, whole.get(name)].includes(readFileSync(join(own, name), 'utf8')), `${what}: ${name}`).toBe(true);
      empty();
    }
    expect(refused).toBeGreaterThan(0);
  });
});

it('has a disk on which it can be full', () => {
  mkdirSync(disk, { recursive: true });
  if (mounted) expect(() => writeFileSync(join(disk, 'large'), Buffer.alloc(SIZE * 2))).toThrow(/ENOSPC/u);
  empty();
});
