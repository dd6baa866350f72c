/** Files that cannot be used: each is refused with its file, line and column, in one plain sentence, and exit 2. */
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { folderWith, refusalIn } from './support/halfcup.ts';

const COURSE = gpxText([straight(OCEAN, 90, 51, 100)]);
const STATION = { id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } };
const PLAN = planText([STATION]);

/** The place, counted from 1, of a piece of a text that stands in it once. */
function placeOf(text: string, piece: string): string {
  expect(text.split(piece)).toHaveLength(2);
  const before = text.slice(0, text.indexOf(piece)).split('\n');
  return `${before.length}:${before.at(-1)!.length + 1}`;
}

/** The place just behind a text. */
function endOf(text: string): string {
  const lines = text.split('\n');
  return `${lines.length}:${lines.at(-1)!.length + 1}`;
}

const refusedGpx = async (content: string | Uint8Array): Promise<readonly string[]> =>
  refusalIn(folderWith({ 'bad.gpx': content }), 'course', 'bad.gpx');
const refusedPlan = async (
  plan: string,
  more: Readonly<Record<string, string>> = { 'c.gpx': COURSE },
): Promise<readonly string[]> => refusalIn(folderWith({ 'p.json': plan, ...more }), 'layout', 'p.json');

/** Starts with the place, and then says something. */
const at = (file: string, place: string, words: RegExp): unknown =>
  expect.stringMatching(new RegExp(`^${file.replace('.', '\\.')}:${place}: error: .*${words.source}`, 'u'));

describe('a GPX file that cannot be used', () => {
  it('is refused when it is empty', async () => {
    expect(await refusedGpx('')).toEqual([at('bad.gpx', '1:1', /empty.*It should be a GPX file/u)]);
  });

  it('is refused when it is a web page', async () => {
    expect(await refusedGpx('<!DOCTYPE html>\n<html><body>Sign in</body></html>')).toEqual([
      at('bad.gpx', '1:1', /HTML|web page/u),
    ]);
  });

  it('is refused at its end when it is cut off', async () => {
    const cut = COURSE.slice(0, COURSE.length / 2);
    expect(await refusedGpx(cut)).toEqual([at('bad.gpx', endOf(cut), /ends inside a tag|is closed/u)]);
  });

  it('is refused when it is no text at all', async () => {
    const bytes = Uint8Array.from({ length: 4096 }, (_, k) => (k * 151 + 37) % 256);
    expect(await refusedGpx(bytes)).toEqual([at('bad.gpx', '1:1', /not XML\. A GPX file begins with/u)]);
  });

  it('is refused at its DOCTYPE, whose entities are never read', async () => {
    const hostile = `<?xml version="1.0"?>\n<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]>\n${COURSE.replace('<trk>', '<trk><name>&x;</name>')}`;
    expect(await refusedGpx(hostile)).toEqual([at('bad.gpx', placeOf(hostile, '<!DOCTYPE'), /DOCTYPE/u)]);
  });

  it('is refused when its only track has one point', async () => {
    const one = gpxText([[OCEAN]]);
    expect(await refusedGpx(one)).toEqual([
      at('bad.gpx', placeOf(one, '<trk>'), /at one place\. It should have at least two different points/u),
    ]);
  });

  it('is refused at the point whose latitude is 95', async () => {
    const wrong = gpxText([[OCEAN, [-17.4, 95], OCEAN]]);
    expect(await refusedGpx(wrong)).toEqual([at('bad.gpx', placeOf(wrong, '<trkpt lat="95"'), /95.*-90/u)]);
  });

  it('is refused at the point whose latitude is a word', async () => {
    const wrong = COURSE.replace('<trkpt lat="-33.2"', '<trkpt lat="north"');
    expect(await refusedGpx(wrong)).toEqual([
      at('bad.gpx', placeOf(wrong, '<trkpt lat="north"'), /latitude is “north”\. It should be a number/u),
    ]);
  });

  it('is refused when there is no such file, or it is a folder', async () => {
    const folder = folderWith({ 'sub/c.gpx': COURSE });
    expect(await refusalIn(folder, 'course', 'none.gpx')).toEqual([
      expect.stringMatching(/^none\.gpx: error: file not found/u),
    ]);
    expect(await refusalIn(folder, 'course', 'sub')).toEqual([expect.stringMatching(/^sub: error: this is a folder/u)]);
  });

  it('is refused with its lines when it has no such track', async () => {
    const folder = folderWith({ 'c.gpx': COURSE.replace('<trk>', '<trk><name>Ridge</name>') });
    expect(await refusalIn(folder, 'course', 'c.gpx', '--track', 'Beach')).toEqual([
      expect.stringMatching(/^c\.gpx: .*no track or route “Beach”.*0: “Ridge”/u),
    ]);
  });
});

describe('a plan that cannot be used', () => {
  it('is refused at an unknown key, with the nearest known one', async () => {
    const plan = planText([{ ...STATION, tabels: { water: 2 } }]);
    expect(await refusedPlan(plan)).toEqual([
      at('p.json', placeOf(plan, '"tabels"'), /“tabels”\. Did you mean “tables”\?/u),
    ]);
  });

  it('is refused at a key that stands twice', async () => {
    const plan = PLAN.replace('"version": 1,', '"version": 1,\n  "name": "A",\n  "name": "B",');
    expect(await refusedPlan(plan)).toEqual([
      at('p.json', placeOf(plan, '"name": "B"'), /“name” appears here a second time/u),
    ]);
  });

  it('is refused at an id that stands twice', async () => {
    const plan = planText([STATION, { on: STATION.on, id: 's1', name: 'twin' }]);
    expect(await refusedPlan(plan)).toEqual([
      at('p.json', placeOf(plan, '"s1",\n      "name": "twin"'), /“s1”, and so is the id of station no\. 1/u),
    ]);
  });

  it('is refused where it names a GPX file that is not there', async () => {
    expect(await refusedPlan(PLAN, {})).toEqual([
      at('p.json', placeOf(PLAN, '"c.gpx"'), /“c\.gpx” was not found beside the plan/u),
    ]);
  });

  it('is refused where it names a GPX file outside its folder', async () => {
    const plan = PLAN.replace('"c.gpx"', '"../c.gpx"');
    const folder = folderWith({ 'c.gpx': COURSE, 'plans/p.json': plan });
    expect(await refusalIn(folder, 'layout', 'plans/p.json')).toEqual([
      at('plans/p.json', placeOf(plan, '"../c.gpx"'), /own folder or below/u),
    ]);
  });

  it('is refused where a link leads out of its folder', async () => {
    const folder = folderWith({ 'secret.gpx': COURSE, 'plans/p.json': PLAN });
    symlinkSync(join(folder, 'secret.gpx'), join(folder, 'plans/c.gpx'));
    expect(await refusalIn(folder, 'layout', 'plans/p.json')).toEqual([
      at('plans/p.json', placeOf(PLAN, '"c.gpx"'), /link to a file outside/u),
    ]);
  });

  it('is refused where a link goes in a circle, or leads nowhere', async () => {
    const folder = folderWith({ 'p.json': PLAN, 'q/p.json': PLAN });
    symlinkSync('c.gpx', join(folder, 'c.gpx'));
    symlinkSync('none.gpx', join(folder, 'q/c.gpx'));
    for (const plan of ['p.json', 'q/p.json'])
      expect(await refusalIn(folder, 'layout', plan)).toEqual([
        at(plan, placeOf(PLAN, '"c.gpx"'), /not found beside the plan/u),
      ]);
  });

  it('is refused at a length in an unknown unit', async () => {
    const plan = planText([STATION], { practice: { signAhead: '100 furlongs' } });
    expect(await refusedPlan(plan)).toEqual([
      at('p.json', placeOf(plan, '"100 furlongs"'), /furlongs.*unit can be m, km/u),
    ]);
  });

  it('is refused at parts that go in a circle', async () => {
    const plan = planText([STATION], {
      courses: [
        { id: 'c', parts: [{ of: 'd' }] },
        { id: 'd', parts: [{ of: 'c' }] },
      ],
    });
    const [line] = await refusedPlan(plan);
    expect(line).toEqual(at('p.json', '\\d+:\\d+', /circle: “c” → “d” → “c”/u));
    expect(line).toContain(`p.json:${placeOf(plan, '[\n        {\n          "of": "d"')}: error: `);
  });

  it('is refused at a station beyond its course', async () => {
    const plan = planText([{ id: 's1', on: { course: 'c', measure: '7 km', side: 'right' } }]);
    expect(await refusedPlan(plan)).toEqual([
      at('p.json', placeOf(plan, '"7 km"'), /The station is at 7\.00 km, but c is 5\.00 km long/u),
    ]);
  });

  it('is refused at the GPX file itself where that is broken, by the way to it', async () => {
    const broken = COURSE.replace('<trkpt lat="-33.2"', '<trkpt lat="north"');
    const folder = folderWith({ 'plans/p.json': PLAN, 'plans/c.gpx': broken });
    expect(await refusalIn(folder, 'layout', 'plans/p.json')).toEqual([
      at('plans/c.gpx', placeOf(broken, '<trkpt lat="north"'), /“north”/u),
    ]);
  });

  it('is refused where a gap of its course is, by its points', async () => {
    const points = straight(OCEAN, 90, 51, 100);
    const [line] = await refusedPlan(PLAN, { 'c.gpx': gpxText([points.slice(0, 20), points.slice(25)]) });
    expect(line).toEqual(
      at('p.json', placeOf(PLAN, '{\n      "id": "c"'), /Two segments are 600 m apart, between points 20 and 21\./u),
    );
  });

  it('is refused when it is a course, or cut off, or no text', async () => {
    expect(await refusedPlan(COURSE)).toEqual([at('p.json', '1:1', /GPX.*not a plan/u)]);
    const cut = PLAN.slice(0, -20);
    expect(await refusedPlan(cut)).toEqual([at('p.json', '\\d+:\\d+', /may be cut off/u)]);
    const folder = folderWith({ 'p.json': Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d) });
    expect(await refusalIn(folder, 'layout', 'p.json')).toEqual([at('p.json', '1:2', /hex FF.*UTF-8/u)]);
  });

  it('tells all its faults in one go', async () => {
    const plan = planText([{ ...STATION, serves: ['beer'], side: 'middle' }], {
      practice: { signAhead: '100 furlongs' },
    });
    expect(await refusedPlan(plan)).toHaveLength(3);
  });
});
