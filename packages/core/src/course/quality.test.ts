import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { inverse } from '../geodesy/karney.ts';
import { ORIGIN, courseThrough, from, generator, segmentThrough, turtlePoints } from '../testing/courses.ts';
import { cleaned, flawFindings, flawsOf, tangleFindings } from './quality.ts';
import { indexCourse } from './segmentIndex.ts';

const road = (length = 1000): LonLat[] => turtlePoints(ORIGIN, [[80, length]], 10);
const flaws = (points: readonly LonLat[]): string[] =>
  flawsOf([segmentThrough(points)]).map((flaw) => `${flaw.kind} ${flaw.first}-${flaw.last}`);

function withSpike(): LonLat[] {
  const points = road();
  points.splice(50, 0, from(points[50]!, 350, 40));
  return points;
}

function withTangle(): LonLat[] {
  const random = generator(3);
  const points = road();
  const stand = points[50]!;
  points.splice(51, 0, ...Array.from({ length: 50 }, () => from(stand, 360 * random(), 4 * random())));
  return points;
}

describe('track quality', () => {
  it('finds nothing on a clean road, on a corner, on an out-and-back and on a closed loop', () => {
    expect(flaws(road())).toEqual([]);
    expect(
      flaws(
        turtlePoints(
          ORIGIN,
          [
            [0, 300],
            [90, 300],
            [270, 300],
            [180, 300],
          ],
          20,
        ),
      ),
    ).toEqual([]);
    expect(
      flaws(
        turtlePoints(
          ORIGIN,
          [
            [0, 500],
            [180, 500],
          ],
          20,
        ),
      ),
    ).toEqual([]);
  });

  it('names a spike by its point and its size, and cleaning takes out that point alone', () => {
    const points = withSpike();
    expect(flaws(points)).toEqual(['spike 50-50']);
    const segment = segmentThrough(points);
    expect(flawsOf([segment])[0]!.size).toBeCloseTo(40, 0);
    const { segments, removed } = cleaned([segment]);
    expect(removed).toHaveLength(1);
    expect(segments[0]).toEqual(segmentThrough(road()));
    expect(segment.lon).toHaveLength(points.length);
  });

  it('names a jump far longer than the steps around it, and a step just under the limit not', () => {
    const after = (gap: number): LonLat[] => [
      ...road(),
      ...turtlePoints(from(road().at(-1)!, 80, gap), [[80, 500]], 10),
    ];
    expect(flaws(after(205))).toEqual(['jump 100-101']);
    expect(flaws(after(195))).toEqual([]);
  });

  it('names points more than 200 m apart on a bend, not on a straight or at one corner', () => {
    const bend = turtlePoints(
      ORIGIN,
      [
        [0, 210],
        [15, 210],
        [30, 210],
        [45, 210],
      ],
      1000,
    );
    expect(flaws(bend)).toEqual(['sparse-bend 1-2', 'sparse-bend 2-3']);
    expect(
      flaws(
        turtlePoints(
          ORIGIN,
          [
            [0, 190],
            [15, 190],
            [30, 190],
            [45, 190],
          ],
          1000,
        ),
      ),
    ).toEqual([]);
    expect(
      flaws(
        turtlePoints(
          ORIGIN,
          [
            [0, 400],
            [0, 400],
            [80, 400],
            [80, 400],
          ],
          1000,
        ),
      ),
    ).toEqual([]);
  });

  it('names a standing-still tangle with its length, and cleaning leaves its ends', () => {
    const points = withTangle();
    const indexed = indexCourse(courseThrough(points));
    const [finding] = tangleFindings(indexed, {});
    expect(finding).toMatchObject({ code: 'track-tangle', severity: 'warning', unit: 'm' });
    expect(finding!.measured).toBeGreaterThan(100);
    expect(finding!.where.measure).toBeGreaterThan(480);
    const { segments } = cleaned([segmentThrough(points)]);
    const length = indexCourse(
      courseThrough([...segments[0]!.lon].map((lon, i) => [lon, segments[0]!.lat[i]!] as const)),
    ).course.raw.at(-1)!;
    expect(length).toBeLessThan(1030);
    expect(tangleFindings(indexCourse(courseThrough(road())), {})).toEqual([]);
  });

  it('says each flaw in a sentence with its size, its points and its place', () => {
    const [finding] = flawFindings(flawsOf([segmentThrough(withSpike())]), { file: 'a.gpx' });
    expect(finding).toMatchObject({ code: 'track-spike', where: { file: 'a.gpx' }, unit: 'm' });
    expect(finding!.message).toContain('Point 51 of segment 1');
  });

  it('takes for a spike what leaves by 15 m and turns by 135°, at both legs, where the course then goes on within 90°', () => {
    /** East for 100 m, to a tip north of it and on; `out` and `back` metres long, turned at the tip by `turn`, then on by `onward` degrees. */
    const spiked = (out: number, back: number, turn: number, onward: number): string[] => {
      const foot = turtlePoints(ORIGIN, [[90, 100]], 50);
      const tip = from(foot.at(-1)!, 0, out);
      const home = from(tip, turn, back);
      return flaws([...foot, tip, home, from(home, 90 + onward, 60), from(home, 90 + onward, 120)]);
    };
    expect(spiked(15.01, 15.01, 136, 0)).toEqual(['spike 3-3']);
    expect(spiked(14.99, 15.01, 136, 0)).toEqual([]);
    expect(spiked(15.01, 14.99, 136, 0)).toEqual([]);
    expect(spiked(20, 20, 135.1, 0)).toEqual(['spike 3-3']);
    expect(spiked(20, 20, 134.9, 0)).toEqual([]);
    expect(spiked(20, 20, 170, 89)).toEqual(['spike 3-3']);
    expect(spiked(20, 20, 170, 91)).toEqual([]);
  });

  it('gives a spike the size of its shorter leg, and its own place', () => {
    const foot = turtlePoints(ORIGIN, [[90, 100]], 50);
    const tip = from(foot.at(-1)!, 0, 40);
    const home = from(tip, 170, 30);
    const [spike] = flawsOf([segmentThrough([...foot, tip, home, from(home, 90, 60), from(home, 90, 120)])]);
    expect(spike).toEqual({ kind: 'spike', segment: 0, first: 3, last: 3, size: expect.closeTo(30, 4), at: tip });
  });

  it('finds no spike in the first two steps and the last: before and behind them nothing tells where the course goes on', () => {
    const tip = from(ORIGIN, 0, 40);
    expect(
      flaws([ORIGIN, tip, from(tip, 175, 40), from(from(tip, 175, 40), 90, 60), from(from(tip, 175, 40), 90, 120)]),
    ).toEqual([]);
    const foot = turtlePoints(ORIGIN, [[90, 100]], 50);
    expect(flaws([...foot, from(foot.at(-1)!, 0, 40), from(foot.at(-1)!, 5, 1)])).toEqual([]);
  });

  it('needs 100 m for a jump where steps are short, and 20 usual steps where they are long', () => {
    const stepping = (step: number, gap: number): string[] =>
      flaws([
        ...turtlePoints(ORIGIN, [[90, step * 20]], step),
        ...turtlePoints(from(ORIGIN, 90, step * 20 + gap), [[90, step * 20]], step),
      ]);
    expect(stepping(2, 100.1)).toEqual(['jump 20-21']);
    expect(stepping(2, 99.9)).toEqual([]);
    expect(stepping(6, 120.1)).toEqual(['jump 20-21']);
    expect(stepping(6, 119.9)).toEqual([]);
  });

  it('wants 200 m between points only where both ends of a step turn by more than 10°', () => {
    const bending = (step: number, first: number, second: number): string[] =>
      flaws(
        turtlePoints(
          ORIGIN,
          [
            [0, step],
            [first, step],
            [first + second, step],
            [first + second, step],
          ],
          1000,
        ),
      );
    expect(bending(201, 10.1, 10.1)).toEqual(['sparse-bend 1-2']);
    expect(bending(199, 10.1, 10.1)).toEqual([]);
    expect(bending(201, 9.9, 10.1)).toEqual([]);
    expect(bending(201, 10.1, 9.9)).toEqual([]);
  });

  it('reads over repeated points, numbers points as the file has them, and tells flaws in running order', () => {
    const spiked = withSpike();
    const repeated = [
      ...spiked.slice(0, 10),
      spiked[9]!,
      spiked[9]!,
      ...spiked.slice(10),
      ...turtlePoints(from(road().at(-1)!, 80, 300), [[80, 100]], 10),
    ];
    expect(flaws(repeated)).toEqual(['spike 52-52', 'jump 103-104']);
    expect(flawsOf([segmentThrough([]), segmentThrough([ORIGIN]), segmentThrough(spiked)])).toMatchObject([
      { segment: 2, kind: 'spike' },
    ]);
  });

  it('cleans each segment of its own flaws only, and leaves jumps and the tangle’s ends', () => {
    const clean = segmentThrough(road());
    const far = turtlePoints(from(road().at(-1)!, 80, 300), [[80, 500]], 10);
    const jumping = segmentThrough([...road(), ...far]);
    const { segments, removed } = cleaned([clean, segmentThrough(withSpike()), jumping]);
    expect(segments[0]).toBe(clean);
    expect(segments[1]).toEqual(clean);
    expect(segments[2]).toBe(jumping);
    expect(removed).toMatchObject([{ kind: 'spike', segment: 1 }]);
    const stood = withTangle();
    const of = cleaned([clean, segmentThrough(stood)]);
    expect(of.removed).toMatchObject([{ kind: 'tangle', segment: 1, size: expect.any(Number) }]);
    const { first, last } = of.removed[0]!;
    expect(of.segments[1]!.lon).toEqual(segmentThrough([...stood.slice(0, first + 1), ...stood.slice(last)]).lon);
    expect(first).toBeGreaterThanOrEqual(48);
    expect(last).toBeLessThanOrEqual(103);
  });

  it('warns of spikes, jumps and tangles, and notes sparse bends, with both points of a step', () => {
    const bend = turtlePoints(
      ORIGIN,
      [
        [0, 210],
        [15, 210],
        [30, 210],
      ],
      1000,
    );
    expect(flawFindings(flawsOf([segmentThrough(bend)]), {})).toEqual([
      {
        code: 'track-sparse-bend',
        severity: 'note',
        message: expect.stringContaining('Points 2 and 3 of segment 1 are 210 m apart on a bend.') as string,
        params: expect.objectContaining({ segment: 1, first: 2, last: 3, most: 200 }) as object,
        where: { at: bend[1] },
        measured: expect.closeTo(210, 3) as number,
        unit: 'm',
      },
    ]);
    expect(flawFindings(flawsOf([segmentThrough(withSpike())]), {})[0]!.severity).toBe('warning');
  });

  it('finds a tangle where it lies, by the course’s own distance', () => {
    const { course, tangles, boxes } = indexCourse(courseThrough(withTangle()));
    const doubled = {
      ...course,
      scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => 2 * measure) },
    };
    const [finding] = tangleFindings({ course: doubled, tangles, boxes }, { file: 'a.gpx' });
    expect(finding!.where).toMatchObject({ file: 'a.gpx', measure: expect.closeTo(2 * tangles[0]!.from, 6) });
    expect(finding!.measured).toBeCloseTo(tangles[0]!.to - tangles[0]!.from, 9);
    expect(finding!.message).toBe(
      `The recorder seems to have stood still: ${(tangles[0]!.to - tangles[0]!.from).toFixed(0)} m of track within 10 m of one place. It is between ${(tangles[0]!.from / 1000).toFixed(2)} km and ${(tangles[0]!.to / 1000).toFixed(2)} km of the recorded line.`,
    );
    expect(inverse(...finding!.where.at!, ...withTangle()[50]!).length).toBeLessThan(15);
  });
});

it('a flaw behind repeated points begins at the first of them', () => {
  const points = road(200);
  const repeated = [
    ...points,
    points.at(-1)!,
    points.at(-1)!,
    ...turtlePoints(from(points.at(-1)!, 80, 300), [[80, 100]], 10),
  ];
  expect(flaws(repeated)).toEqual(['jump 20-23']);
});
