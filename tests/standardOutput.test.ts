/** Standard output that is full, or that nobody reads: a status and at most one line, never a stack. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { MAIN } from './support/halfcup.ts';

const DEMO = join(ROOT, 'fixtures/demo');

/** Runs a call in a shell, which is told what to do with its output; gives the call's own status behind `ended`. */
function inShell(call: string, output: string): { readonly status: number; readonly err: string } {
  const script = `( "${process.execPath}" "${MAIN}" ${call}; echo "ended $?" >&2 ) ${output}`;
  const { stderr } = spawnSync('sh', ['-c', script], { cwd: DEMO, encoding: 'utf8' });
  const [, err, status] = /^([\s\S]*)ended (\d+)\n$/u.exec(stderr)!;
  return { status: Number(status), err: err! };
}

const CALLS = [
  'layout plan.json',
  'review plan.json --json',
  'review plan.json plan.json --json-lines',
  'raceday plan.json',
  'export plan.json --to csv',
  'schema plan',
  '--help',
  '--limits',
];

describe.each(CALLS)('%s', (call) => {
  it('ends with 2 and one line where the disk behind it is full', () => {
    const { status, err } = inShell(call, '> /dev/full');
    expect(status).toBe(2);
    expect(err).toBe('halfcup: the output could not be written (ENOSPC).\n');
  });

  it('ends with 141 and no word where nobody reads', () => {
    // The reader is gone before the first byte comes.
    const { status, err } = inShell(call, '| ( exec 0<&-; sleep 3 )');
    expect([status, err]).toEqual([141, '']);
  });
});

it('keeps its status where only standard error is full', () => {
  const { status } = spawnSync('sh', ['-c', `"${process.execPath}" "${MAIN}" nope 2> /dev/full`], { cwd: DEMO });
  expect(status).toBe(2);
});
