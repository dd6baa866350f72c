/** `halfcup review` of several plans with --json-lines: worker threads, the order of lines, and what becomes of a plan at which a thread fails. */
import { type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { MAIN, folderWith, halfcupIn, halfcupProcess, refusalIn } from './support/halfcup.ts';

const SOUND = planText([{ id: 's1', on: { course: 'c', measure: 2000, side: 'right' } }]);
/** A sign that would stand before the start: an error. */
const EARLY = planText([{ id: 's1', on: { course: 'c', measure: 50, side: 'right' } }]);
const folder = folderWith({
  'c.gpx': gpxText([straight(OCEAN, 90, 41, 100)]),
  'sound.json': SOUND,
  'early.json': EARLY,
  'unknown-key.json': planText([], { colour: 'red' }),
  'cut-off.json': SOUND.slice(0, 200),
});
const DEMO = join(ROOT, 'fixtures/demo/plan.json');
/** The slowest first, so that what comes after it is done before it. */
const PLANS = [
  DEMO,
  'sound.json',
  'unknown-key.json',
  'early.json',
  'none.json',
  DEMO,
  'cut-off.json',
  'sound.json',
  'sound.json',
  'early.json',
];

interface Line {
  readonly file: string;
  readonly plan?: { readonly name: string };
  readonly problems?: readonly {
    readonly code: string;
    readonly severity: string;
    readonly message: string;
    readonly where: { readonly file: string };
  }[];
}
const linesOf = (out: string): Line[] =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);

/** As `halfcupIn`, for calls in which the program is made to fail, with what Node itself is told. */
const withNode = (options: string, ...args: readonly string[]): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, [MAIN, 'review', ...args], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    env: { ...process.env, NODE_OPTIONS: options },
  });

/** A module that each thread of a run begins with. */
function first(name: string, code: string): string {
  writeFileSync(join(folder, name), code);
  return `--import=${pathToFileURL(join(folder, name)).href}`;
}

describe('the lines', () => {
  it('have the order of the plans and are the same from one thread, two, many and as many as there are processors', async () => {
    const one = await halfcupIn(folder, 'review', ...PLANS, '--json-lines', '--workers', '1');
    expect(linesOf(one.out).map(({ file }) => file)).toEqual(PLANS);
    expect(one.exit).toBe(2);
    for (const workers of [['--workers', '2'], ['--workers', '7'], []])
      expect(halfcupProcess(folder, 'review', ...PLANS, '--json-lines', ...workers)).toEqual(one);
  });

  it('hold what the review of each plan alone says', async () => {
    const [demo, sound] = linesOf(
      halfcupProcess(folder, 'review', DEMO, 'sound.json', '--json-lines', '--workers', '2').out,
    );
    expect(demo).toEqual({
      file: DEMO,
      ...(JSON.parse((await halfcupIn(folder, 'review', DEMO, '--json')).out) as object),
    });
    expect(sound).toEqual({
      file: 'sound.json',
      ...(JSON.parse((await halfcupIn(folder, 'review', 'sound.json', '--json')).out) as object),
    });
  });

  it('tell the problems of plans that cannot be used, as stderr does in the same order, and the others are reviewed', async () => {
    const { out, err } = halfcupProcess(folder, 'review', ...PLANS, '--json-lines', '--workers', '2');
    const unusable = linesOf(out).filter(({ problems }) => problems !== undefined);
    expect(unusable.map(({ file }) => file)).toEqual(['unknown-key.json', 'none.json', 'cut-off.json']);
    const told = err.trimEnd().split('\n');
    expect(told).toHaveLength(unusable.flatMap(({ problems }) => problems!).length);
    expect(told[0]).toMatch(/^unknown-key\.json:\d+:\d+: error: .*“colour”/u);
    expect(told[1]).toMatch(/^none\.json: error: file not found/u);
    expect(told[2]).toMatch(/^cut-off\.json:\d+:\d+: error: /u);
    expect(linesOf(out).filter(({ plan }) => plan !== undefined)).toHaveLength(PLANS.length - 3);
  });

  it('go to the file of --out, which is none of the plans and their courses and is kept without --force', async () => {
    const printed = halfcupProcess(folder, 'review', ...PLANS, '--json-lines', '--workers', '2');
    expect(halfcupProcess(folder, 'review', ...PLANS, '--json-lines', '--workers', '2', '--out', 'lines.txt')).toEqual({
      ...printed,
      out: '',
    });
    expect(readFileSync(join(folder, 'lines.txt'), 'utf8')).toBe(printed.out);
    expect(await refusalIn(folder, 'review', ...PLANS, '--json-lines', '--out', 'lines.txt')).toEqual([
      expect.stringMatching(/^lines\.txt: error: this file exists already/u),
    ]);
    for (const input of ['early.json', 'c.gpx'])
      expect(await refusalIn(folder, 'review', ...PLANS, '--json-lines', '--out', input, '--force')).toEqual([
        expect.stringContaining('would be lost'),
      ]);
    expect(await refusalIn(folder, 'review', ...PLANS, '--json-lines', '--out', 'nowhere/lines.txt')).toEqual([
      expect.stringContaining('folder not found'),
    ]);
    expect([readFileSync(join(folder, 'lines.txt'), 'utf8'), readFileSync(join(folder, 'early.json'), 'utf8')]).toEqual(
      [printed.out, EARLY],
    );
  });

  it('are not held back: while they are not read, no plan far behind is reached', async () => {
    // Each line has over 5,000 bytes, of which the pipe and the reader's buffer hold far less than 100 lines.
    const many = [...Array.from({ length: 100 }, () => 'sound.json'), 'none.json'];
    const child = spawn(process.execPath, [MAIN, 'review', ...many, '--json-lines', '--workers', '2'], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let err = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.stdout.setEncoding('utf8');
    await once(child.stdout, 'readable');
    out += child.stdout.read() as string;
    expect(out).toMatch(/^\{"file":"sound\.json"/u);
    expect(err).toBe('');
    child.stdout.on('data', (text: string) => {
      out += text;
    });
    const [exit] = (await once(child, 'close')) as [number];
    expect([exit, linesOf(out).length, out.length > 500_000]).toEqual([2, 101, true]);
    expect(err).toMatch(/^none\.json: error: /u);
  });

  it.each(['1', '2'])(
    'may be read by one who has seen enough, with %s at work: nothing is said, and it ends as a shell has it of a closed pipe',
    (workers) => {
      const plans = Array.from({ length: 60 }, () => 'early.json').join(' ');
      const { stdout, stderr } = spawnSync(
        'sh',
        [
          '-c',
          `( "${process.execPath}" "${MAIN}" review ${plans} --json-lines --workers ${workers}; echo "ended with $?" >&2 ) | head -n 1`,
        ],
        { cwd: folder, encoding: 'utf8' },
      );
      expect(linesOf(stdout).map(({ file }) => file)).toEqual(['early.json']);
      expect(stderr).toBe('ended with 141\n');
    },
  );
});

describe('--workers', () => {
  it('is a whole number from 1 to 256 and belongs to --json-lines', async () => {
    for (const bad of ['0', '-1', '1.5', '1e2', '257', '99999999999999999999', 'two', ' 2', '0x2']) {
      expect(await refusalIn(folder, 'review', 'sound.json', 'early.json', '--json-lines', '--workers', bad)).toEqual([
        `halfcup: error: "${bad}" is no value for --workers; give a whole number from 1 to 256, such as --workers 2`,
      ]);
    }
    expect((await refusalIn(folder, 'review', 'sound.json', 'early.json', '--json-lines', '--workers'))[0]).toMatch(
      /--workers needs a value, such as --workers 2/u,
    );
    expect((await refusalIn(folder, 'review', 'sound.json', '--workers', '2'))[0]).toMatch(
      /--workers needs --json-lines/u,
    );
  });

  it.each([
    { plans: 2, workers: '1', threads: 1 },
    { plans: 3, workers: '2', threads: 2 },
    { plans: 3, workers: '256', threads: 3 },
    { plans: 1, workers: '2', threads: 0 },
  ])('of $workers begins $threads threads beside the first for $plans plans', ({ plans, workers, threads }) => {
    const log = join(folder, 'threads.log');
    rmSync(log, { force: true });
    const note = first(
      'note.mjs',
      `import { appendFileSync } from 'node:fs'; import { isMainThread } from 'node:worker_threads'; appendFileSync(${JSON.stringify(log)}, isMainThread ? '' : 'thread\\n');`,
    );
    const { status, stderr } = withNode(
      note,
      ...Array.from({ length: plans }, () => 'sound.json'),
      '--json-lines',
      '--workers',
      workers,
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(readFileSync(log, 'utf8')).toBe('thread\n'.repeat(threads));
  });
});

describe('a fault at one plan', () => {
  it.each(['1', '2'])('is told in its line and on stderr, and stops no other plan, with %s at work', (workers) => {
    const trap = first(
      'trap.mjs',
      `const { stringify } = JSON; JSON.stringify = (value, ...more) => { if (value?.file === 'early.json' && value.plan) throw new Error('a trap\\n    at somewhere'); return stringify(value, ...more); };`,
    );
    const { status, stdout, stderr } = withNode(
      trap,
      'sound.json',
      'early.json',
      'sound.json',
      '--json-lines',
      '--workers',
      workers,
    );
    const message =
      'this is a fault of Halfcup, not of your plan (a trap); please report it with the command that you gave.';
    expect(stderr).toBe(`early.json: error: ${message}\n`);
    const lines = linesOf(stdout);
    expect(lines[1]).toEqual({
      file: 'early.json',
      problems: [{ code: 'halfcup-fault', severity: 'error', message, where: { file: 'early.json' } }],
    });
    expect([lines[0]!.plan, lines[2]!.plan, lines.length]).toEqual([expect.anything(), expect.anything(), 3]);
    expect(status).toBe(2);
    expect(withNode(trap, 'early.json', '--json-lines').stderr).toBe(`early.json: error: ${message}\n`);
  });

  it.each(['1', '2'])(
    'may be that memory is short, with %s at work: another thread takes the place, and the message says how to give more',
    (workers) => {
      const hungry = first(
        'hungry.mjs',
        `const { stringify } = JSON; JSON.stringify = (value, ...more) => { if (value?.file === 'early.json' && value.plan) { const held = []; for (;;) held.push(Array.from({ length: 100_000 }, Math.random)); } return stringify(value, ...more); };`,
      );
      const { status, stdout, stderr } = withNode(
        `${hungry} --max-old-space-size=60`,
        'sound.json',
        'early.json',
        'sound.json',
        'sound.json',
        '--json-lines',
        '--workers',
        workers,
      );
      expect(linesOf(stdout).map(({ file, plan }) => [file, plan !== undefined])).toEqual([
        ['sound.json', true],
        ['early.json', false],
        ['sound.json', true],
        ['sound.json', true],
      ]);
      expect(linesOf(stdout)[1]!.problems!.map(({ code }) => code)).toEqual(['out-of-memory']);
      expect(stderr).toBe(
        'early.json: error: reviewing this plan takes more memory than Node gives; give it more, such as NODE_OPTIONS=--max-old-space-size=8192 (in MB), or use fewer --workers\n',
      );
      expect(status).toBe(2);
    },
  );

  it('may be that no thread can begin: a plan that was given to one says so, and the first thread reviews the rest', () => {
    const dead = first(
      'dead.mjs',
      "import { isMainThread } from 'node:worker_threads'; if (!isMainThread) throw new Error('no thread begins here');",
    );
    const { status, stdout, stderr } = withNode(
      dead,
      ...Array.from({ length: 12 }, () => 'sound.json'),
      '--json-lines',
      '--workers',
      '2',
    );
    const lines = linesOf(stdout);
    const faults = lines.filter(({ problems }) => problems !== undefined);
    expect(lines).toHaveLength(12);
    expect([lines.slice(2).every(({ plan }) => plan !== undefined), faults.length > 0]).toEqual([true, true]);
    for (const { problems } of faults) expect(problems![0]!.message).toContain('(no thread begins here)');
    expect([stderr.trimEnd().split('\n').length, status]).toEqual([faults.length, 2]);
  });
});
