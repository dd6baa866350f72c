/** `halfcup course` with known marks, a known length, and tracks that want cleaning. */
import { describe, expect, it } from 'vitest';
import { OCEAN, gpxText, straight } from './support/courses.ts';
import { documentIn, folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

interface Facts {
  readonly length: number;
  readonly raw: number;
  readonly points: number;
  readonly factors: readonly { readonly from: number; readonly to: number; readonly factor: number }[];
  readonly marks: readonly { readonly name: string | null; readonly measure: number }[];
  readonly findings: readonly { readonly code: string; readonly severity: string; readonly measured?: number }[];
}

// 10 km due east, a point each 100 m; waypoints at 4 km and at 8 km of it.
const LINE = straight(OCEAN, 90, 101, 100);
const place = (k: number): string =>
  LINE[k]!.slice(0, 2)
    .map((degrees) => degrees.toFixed(9))
    .join(',');
const waypoint = (k: number, name: string): string =>
  `<wpt lat="${LINE[k]![1]}" lon="${LINE[k]![0]}"><name>${name}</name></wpt>`;
const marked = gpxText([LINE]).replace(
  '<trk>',
  `${waypoint(40, '2.5 mi')}${waypoint(80, 'km 8')}${waypoint(60, 'Harbour')}<trk>`,
);
// 1 km, a point each 10 m, one of them 44 m to the north.
const FINE = straight(OCEAN, 90, 101, 10);
const spiked = [...FINE.slice(0, 50), [FINE[49]![0], FINE[49]![1] + 0.0004] as const, ...FINE.slice(50)];
const spoken = marked.replace('Harbour', 'KM 6 water');
const folder = folderWith({
  'c.gpx': marked,
  'spoken.gpx': spoken,
  'only.gpx': gpxText([LINE], [{ at: LINE[60]!, name: 'KM 6 water' }]),
  'spiked.gpx': gpxText([spiked]),
});
const facts = async (...call: string[]): Promise<Facts> => (await documentIn(folder, 'course', ...call)) as Facts;

describe('halfcup course', () => {
  it('shows raw and calibrated lengths, and the factor between', async () => {
    const { length, raw, factors } = await facts('c.gpx', '--length', '10.1km');
    expect(length).toBe(10_100);
    expect(raw).toBeCloseTo(10_000, 3);
    expect(factors).toEqual([{ from: 0, to: 10_100, factor: expect.closeTo(1.01, 6) }]);
  });

  it('takes marks by place, also one that begins with a minus, and by the name of a waypoint with or without a distance', async () => {
    expect((await facts('c.gpx', '--mark', `${place(50)}=5.05km`)).factors[0]!.factor).toBeCloseTo(1.01, 6);
    expect((await facts('c.gpx', `--mark=${place(50)}=5.05km`)).length).toBeCloseTo(10_100, 2);
    expect((await facts('c.gpx', '--mark', 'km 8', '--mark', 'Harbour=6.06km')).factors.map(({ to }) => to)).toEqual([
      6060,
      8000,
      expect.closeTo(9940, -2),
    ]);
  });

  it('takes every waypoint whose name says a distance', async () => {
    const { factors } = await facts('c.gpx', '--waypoint-marks');
    expect(factors.map(({ to }) => to)).toEqual([expect.closeTo(4023.36, 6), 8000, expect.closeTo(9988, -1)]);
  });

  it('tells which marks it took, and names waypoints that speak of a distance among other words', async () => {
    expect((await facts('c.gpx')).marks).toEqual([]);
    expect((await facts('c.gpx', '--mark', `${place(50)}=5.05km`)).marks).toEqual([{ name: null, measure: 5050 }]);
    expect((await facts('c.gpx', '--waypoint-marks')).marks).toEqual([
      { name: '2.5 mi', measure: 4023.36 },
      { name: 'km 8', measure: 8000 },
    ]);
    expect((await halfcupIn(folder, 'course', 'c.gpx', '--waypoint-marks')).out).toMatch(
      /^Marks +2\.5 mi at 4\.023 km; km 8 at 8\.000 km$/mu,
    );
    const spoken = (await facts('spoken.gpx', '--waypoint-marks')).findings.filter(
      ({ code }) => code === 'mark-unused',
    );
    expect(spoken).toEqual([
      expect.objectContaining({ severity: 'note', message: expect.stringContaining('"KM 6 water"') as string }),
    ]);
  });

  it('says a factor that is far from 1', async () => {
    expect((await facts('c.gpx', '--length', '10.4km')).findings).toEqual([
      expect.objectContaining({ code: 'mark-factor', severity: 'warning', measured: expect.closeTo(1.04, 4) }),
    ]);
  });

  it.each([
    [['--mark', `${place(20)}=5km`, '--mark', `${place(60)}=3km`], 'not in order'],
    [['--mark', 'Nowhere'], 'gives no course distance'],
    [['--mark', '9 km'], 'no waypoint of that name'],
    [['--mark', place(20)], 'has no distance'],
    [['--mark', `${place(20)}=5 parsecs`], 'parsecs'],
    [['--mark', '-17,-95=5km'], 'latitude'],
    [['--length', '0m'], 'It should be more than 0.'],
  ])('refuses %j in plain words', async (options, message) => {
    expect((await refusalIn(folder, 'course', 'c.gpx', ...options)).join('\n')).toContain(message);
  });

  it('names the waypoint that may have been meant', async () => {
    expect((await refusalIn(folder, 'course', 'c.gpx', '--mark', 'Harbuor')).join()).toContain(
      'Did you mean “Harbour”?',
    );
    expect((await refusalIn(folder, 'course', 'c.gpx', '--mark', 'Harbuor=6km')).join()).toContain(
      'Did you mean “Harbour”?',
    );
    expect((await refusalIn(folder, 'course', 'only.gpx', '--waypoint-marks')).join()).toContain(
      'if "KM 6 water" is meant',
    );
  });

  it('names a spike and leaves it in, unless it is told to clean', async () => {
    const before = await facts('spiked.gpx');
    expect(before.findings.map(({ code }) => code)).toEqual(['track-spike']);
    const after = await facts('spiked.gpx', '--clean');
    expect(after.findings.map(({ code, severity }) => `${code} ${severity}`)).toEqual(['track-cleaned note']);
    expect(before.points - after.points).toBe(1);
    expect(after.raw).toBeCloseTo(1000, 3);
    expect(before.raw).toBeGreaterThan(1070);
  });
});
