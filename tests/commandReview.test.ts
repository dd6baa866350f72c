/** `halfcup review`: what it ends with, what it prints, and the report that is printed and signed. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { escapeText } from '../packages/core/src/papers/html.ts';
import { checkTitle } from '../packages/core/src/text/checkTexts.ts';
import { ROOT } from './support/build.ts';
import { OCEAN, go, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const points = straight(OCEAN, 90, 41, 100);
const folder = folderWith({ 'c.gpx': gpxText([points]) });
const at = (measure: number, more: object = {}): object => ({
  id: 's1',
  on: { course: 'c', measure, side: 'right' },
  ...more,
});
/** A sign that would stand before the start: an error. */
const EARLY = at(50);
/** Gel without water: a warning, and an error for the whole race. */
const DRY = at(2000, { serves: ['gel'] });
const SOUND = at(2000);
/** What a plan has that leaves nothing out: without, a warning for each. */
const WHOLE = {
  contacts: { emergency: '1', raceControl: '2', radioChannel: '3' },
  races: [
    {
      id: 'm',
      course: 'c',
      waves: [{ time: '08:00', entrants: 100 }],
      finish: { median: '0:24:00', spread: 0.2 },
    },
  ],
};
const whole = (measure: number): object =>
  at(measure, {
    width: '9 m',
    people: { captain: 'R. Gull', radio: 'Quay' },
    points: ['drop', 'access', 'medical'].map((kind) => ({
      kind,
      at: go(go(OCEAN, 90, Math.max(measure - 20, 1)), 180, 9),
    })),
  });
const WAIVED = {
  code: 'item-outside',
  station: 's1',
  by: 'R. Gull',
  reason: 'a sign in the start area',
  date: '2027-08-01',
};

interface Review {
  readonly file?: string;
  readonly problems?: readonly { readonly code: string; readonly message: string }[];
  readonly plan: { readonly name: string; readonly sha256: string };
  readonly inputs: readonly { readonly file: string; readonly sha256: string }[];
  readonly checks: readonly {
    readonly code: string;
    readonly title: string;
    readonly theme: string;
    readonly ran: boolean;
    readonly reason?: string;
    readonly found: number;
  }[];
  readonly findings: readonly { readonly code: string; readonly severity: string; readonly waived?: object }[];
  readonly counts: Readonly<Record<string, number>>;
}

function planned(file: string, station: object, more: object = {}): string {
  writeFileSync(join(folder, file), planText([station], more));
  return file;
}
const review = async (file: string, ...args: readonly string[]): Promise<{ exit: number | null; document: Review }> => {
  const { exit, out } = await halfcupIn(folder, 'review', file, '--json', ...args);
  return { exit, document: JSON.parse(out) as Review };
};
const sha256 = (file: string): string =>
  createHash('sha256')
    .update(readFileSync(join(folder, file)))
    .digest('hex');

describe('halfcup review', () => {
  it('ends with 1 at an error that nobody has waived, and with 0 once it is waived; the finding stays', async () => {
    const open = await review(planned('p.json', EARLY));
    expect([open.exit, open.document.counts]).toEqual([1, expect.objectContaining({ error: 1, waived: 0 })]);
    const waived = await review(planned('p.json', whole(50), { ...WHOLE, waivers: [WAIVED] }), '--strict');
    expect([waived.exit, waived.document.counts]).toEqual([0, expect.objectContaining({ error: 0, waived: 1 })]);
    expect(waived.document.findings).toContainEqual(
      expect.objectContaining({
        code: 'item-outside',
        severity: 'error',
        waived: { by: WAIVED.by, reason: WAIVED.reason, date: WAIVED.date },
      }),
    );
  });

  it('ends with 1 at a warning only with --strict, and never at a note', async () => {
    // It does not say who runs, whom to call, how wide the road is: warnings.
    planned('p.json', SOUND);
    expect([(await review('p.json')).exit, (await review('p.json', '--strict')).exit]).toEqual([0, 1]);
    const noted = await review(planned('p.json', whole(2000), WHOLE), '--strict');
    expect([noted.exit, noted.document.counts]).toEqual([0, expect.objectContaining({ error: 0, warning: 0 })]);
    expect(noted.document.counts['note']).toBeGreaterThan(0);
  });

  it('ends with 2 and prints nothing where the plan cannot be used', async () => {
    expect((await refusalIn(folder, 'review', planned('p.json', { ...at(2000), colour: 'red' })))[0]).toMatch(
      /^p\.json:\d+:\d+: error: .*“colour”/u,
    );
    expect((await refusalIn(folder, 'review', 'none.json'))[0]).toMatch(/^none\.json: error: file not found/u);
    expect((await refusalIn(folder, 'review', planned('p.json', at(9000))))[0]).toMatch(
      /^p\.json:\d+:\d+: error: .*9\.00 km/u,
    );
  });

  it('holds the SHA-256 of the plan and of every file it names, and every check with the reason where it could not run', async () => {
    const { document } = await review(planned('p.json', SOUND));
    expect(document.plan.sha256).toBe(sha256('p.json'));
    expect(document.inputs).toEqual([{ file: 'c.gpx', sha256: sha256('c.gpx') }]);
    const unrun = document.checks.filter(({ ran }) => !ran);
    expect(unrun).toContainEqual(
      expect.objectContaining({ code: 'length-differs', found: 0, reason: 'the plan states no course length' }),
    );
    expect(document.counts['notRun']).toBe(unrun.length);
    const passed = document.checks.filter(({ ran, found }) => ran && found === 0);
    const { out } = await halfcupIn(folder, 'review', 'p.json');
    expect(out).toContain(`${passed.length} of ${document.checks.length} checks passed.`);
    expect(out).toContain(`${unrun.length} checks could not run:`);
    for (const { reason } of unrun) expect(out).toContain(reason!);
    expect(out).not.toContain(document.plan.sha256);
    const { out: all } = await halfcupIn(folder, 'review', 'p.json', '--all');
    for (const { code, title } of document.checks)
      expect(all).toMatch(new RegExp(`^${code} .*${title.slice(0, 20)}`, 'mu'));
    for (const { sha256: digest } of [document.plan, ...document.inputs]) expect(all).toContain(digest);
  });

  it('prints findings by severity with measured and limit, waived ones with name and reason, and the caution', async () => {
    const { out } = await halfcupIn(folder, 'review', planned('p.json', EARLY, { waivers: [WAIVED] }), '--all');
    expect(out).toMatch(
      /Waived\n {2}s1: [^]*\n {4}p\.json:\d+:\d+ · item-outside · .* · measured -41\.4 m · limit 0 m to 4\.000 km\n {4}waived by R\. Gull, 2027-08-01: a sign in the start area/u,
    );
    expect(out).toMatch(/local codes, the road authority, the police and licensed practitioners decide/u);
    const dry = planned('p.json', DRY);
    const imperial = (await halfcupIn(folder, 'review', dry, '--units', 'imperial', '--all')).out;
    expect(imperial).toMatch(/Warnings\n {2}s1: .*\n(?: {2}.*\n)*? {4}p\.json:\d+:\d+ · gel-without-water · /u);
    expect(imperial).toMatch(/limit 0\.994 mi/u);
  });
});

describe('halfcup review of several plans', () => {
  it('prints one document a line with its file, and the problems of a plan that cannot be used', async () => {
    const files = [
      planned('a.json', SOUND),
      planned('b.json', { ...at(2000), colour: 'red' }),
      planned('c.json', EARLY),
    ];
    const { exit, out, err } = await halfcupIn(folder, 'review', ...files, '--json-lines');
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Review);
    expect(lines.map(({ file }) => file)).toEqual(files);
    expect(lines[0]).toMatchObject({ plan: { sha256: sha256('a.json') }, counts: { error: 0 } });
    expect(lines[1]!.problems).toEqual([
      expect.objectContaining({ message: expect.stringContaining('“colour”') as string }),
    ]);
    expect(lines[2]!.counts['error']).toBe(1);
    expect(exit).toBe(2);
    expect(err).toMatch(/^b\.json:\d+:\d+: error: .*“colour”/u);
  });

  it('ends with 1 where all can be used and one has an error, and with 0 where none has', async () => {
    const [sound, early] = [planned('a.json', SOUND), planned('c.json', EARLY)];
    expect((await halfcupIn(folder, 'review', sound, early, '--json-lines')).exit).toBe(1);
    expect((await halfcupIn(folder, 'review', sound, sound, '--json-lines')).exit).toBe(0);
  });

  it('needs --json-lines for several, and takes no --report with it; a single plan that cannot be used prints nothing', async () => {
    const sound = planned('a.json', SOUND);
    expect((await refusalIn(folder, 'review', sound, sound))[0]).toMatch(
      /takes one plan, and 2 are given; --json-lines/u,
    );
    expect((await refusalIn(folder, 'review', sound, '--json-lines', '--report', 'no.html'))[0]).toMatch(
      /--report and --json-lines do not go together/u,
    );
    expect(existsSync(join(folder, 'no.html'))).toBe(false);
    expect((await refusalIn(folder, 'review', 'none.json', '--json-lines'))[0]).toMatch(/file not found/u);
  });
});

describe('the report', () => {
  const EVIL = `<script>alert("x")</script> & 'y' \u202E`;
  const HEBREW = 'תחנת מים';
  const LONG = 'W'.repeat(200);

  it('holds digests, every check, sides and who walked them, waivers, practice with its reasons, and lines to sign', async () => {
    const station = at(50, {
      name: 'Strand',
      walked: { by: 'R. Tern', date: '2027-06-01' },
      practice: { tableGap: '12 ft' },
      why: 'a driveway at 100 yd',
    });
    planned('p.json', station, { name: 'Ganneth', revision: '7', waivers: [WAIVED] });
    expect((await halfcupIn(folder, 'review', 'p.json', '--report', 'r.html')).exit).toBe(0);
    const text = readFileSync(join(folder, 'r.html'), 'utf8');
    const { document } = await review('p.json');
    // Checks of files and data that passed are told by their number.
    for (const { code, ran, found, theme } of document.checks)
      if (!ran || found > 0 || !['line', 'left-out'].includes(theme))
        expect(text).toContain(ran && found > 0 ? code : escapeText(checkTitle(code, 'en')));
    expect(document.checks.every(({ title }) => title !== '')).toBe(true);
    for (const part of [
      'Ganneth',
      '7',
      sha256('p.json'),
      sha256('c.gpx'),
      'void once',
      'R. Tern',
      '2027-06-01',
      'a driveway at 100 yd',
      '3.66 m (the plan: 3.05 m)',
      'R. Gull',
      WAIVED.reason,
      'a recorded track',
      'What could not be checked',
      'Event director',
      'Road authority',
      'licensed practitioners decide',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/\bNaN\b|undefined|\[object/u);
  });

  it('runs nothing and keeps its shape whatever names a plan holds', async () => {
    const station = at(2000, {
      id: 'x"><b>',
      name: `${LONG}${EVIL}`,
      why: EVIL,
      fixed: true,
      walked: { by: EVIL, date: '2027-06-01' },
      serves: ['gel'],
      points: [{ kind: 'medical', at: go(points[20]!, 0, 10), name: EVIL }],
    });
    const more = {
      name: EVIL,
      revision: EVIL,
      courses: [{ id: 'c', name: EVIL, gpx: 'c.gpx', certificate: EVIL }],
      races: [{ id: 'm', name: HEBREW, course: 'c' }],
      waivers: [{ code: 'gel-without-water', by: EVIL, reason: EVIL }],
    };
    const { exit, out } = await halfcupIn(
      folder,
      'review',
      planned('evil.json', station, more),
      '--report',
      'evil.html',
    );
    expect(exit).toBe(1);
    expect(out).not.toContain('\u202E');
    const text = readFileSync(join(folder, 'evil.html'), 'utf8');
    expect(text).not.toMatch(/<script|alert\("|\u202E|<b>"|x"><b>/u);
    expect(text).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;y&#39;');
    expect(text).toContain(`<bdi>${HEBREW}</bdi>`);
    expect(text).toContain(LONG);
    expect(text).toMatch(
      /Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:"/u,
    );
    // Every element that opens closes, void ones and those of drawings that close themselves aside.
    const opened = [...text.matchAll(/<([a-z][a-z0-9]*)\b(?![^<>]*\/>)/gu)]
      .map(([, name]) => name!)
      .filter((name) => !['meta', 'br'].includes(name));
    const closed = [...text.matchAll(/<\/([a-z][a-z0-9]*)>/gu)].map(([, name]) => name!);
    expect(opened.sort()).toEqual(closed.sort());
  });

  it('is never written over without --force', async () => {
    planned('p.json', SOUND, { revision: 'first' });
    expect((await halfcupIn(folder, 'review', 'p.json', '--report', 'kept.html')).exit).toBe(0);
    planned('p.json', SOUND, { revision: 'second' });
    expect((await refusalIn(folder, 'review', 'p.json', '--report', 'kept.html'))[0]).toMatch(
      /^kept\.html: error: .*exists already.*--force/u,
    );
    expect(readFileSync(join(folder, 'kept.html'), 'utf8')).toContain('first');
    expect((await halfcupIn(folder, 'review', 'p.json', '--report', 'kept.html', '--force')).exit).toBe(0);
    expect(readFileSync(join(folder, 'kept.html'), 'utf8')).toContain('second');
    expect((await refusalIn(folder, 'review', 'p.json', '--report', 'same', '--out', 'same'))[0]).toMatch(
      /--report and --out both name "same"/u,
    );
  });

  it('of the demo names every station and finding', async () => {
    const report = join(folder, 'demo.html');
    expect((await halfcupIn(ROOT, 'review', 'fixtures/demo/plan.json', '--report', report)).exit).toBe(1);
    const text = readFileSync(report, 'utf8');
    const plan = JSON.parse(readFileSync(join(ROOT, 'fixtures/demo/plan.json'), 'utf8')) as {
      stations: { name: string }[];
    };
    for (const { name } of plan.stations) expect(text).toContain(name);
    expect(text).toContain('sign-distance');
  });
});
