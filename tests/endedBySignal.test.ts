/** A process that is told to end does so at once, also in the middle of a long reckoning, and leaves nothing half written. */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { MAIN } from './support/halfcup.ts';
import { FIXTURES } from './support/fixtures.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfcup-signal-'));
  cpSync(join(FIXTURES, 'demo'), folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** How a process ends that is sent a signal so many milliseconds after it has begun. */
const endOf = async (
  signal: NodeJS.Signals,
  after: number,
  ...call: readonly string[]
): Promise<readonly [code: number | null, signal: NodeJS.Signals | null]> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, [MAIN, ...call], { cwd: folder, stdio: 'ignore' });
    child.on('exit', (code, by) => resolve([code, by]));
    setTimeout(() => child.kill(signal), after);
  });

describe('told to end', () => {
  // Where it went on to its end, it would exit with 0.
  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'by %s, it ends while it searches for better places',
    async (signal) => {
      const [code, by] = await endOf(signal, 1500, 'improve', 'plan.json', '--out', 'better.json');
      expect(by ?? code).toBe(signal);
      expect(readdirSync(folder).filter((name) => name.includes('better'))).toEqual([]);
    },
  );

  it('it leaves no paper half written, whenever that is', async () => {
    const before = readdirSync(folder).sort();
    for (const after of [200, 600, 1000, 1500, 2000, 2500]) {
      const [code, by] = await endOf('SIGTERM', after, 'sheets', 'plan.json', '--out', 'papers');
      expect([0, 143, 'SIGTERM']).toContain(by ?? code);
      const left = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.part'));
      expect(left).toEqual([]);
      rmSync(join(folder, 'papers'), { recursive: true, force: true });
    }
    expect(readdirSync(folder).sort()).toEqual(before);
  });
});
