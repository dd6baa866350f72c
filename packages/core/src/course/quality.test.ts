import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { ORIGIN, courseThrough, from, generator, segmentThrough, turtlePoints } from '../testing/courses.ts';
import { cleaned, flawFindings, flawsOf, tangleFindings } from './quality.ts';
import { indexCourse } from './segmentIndex.ts';

const road = (length = 1000): LonLat[] => turtlePoints(ORIGIN, [[80, length]], 10);
const flaws = (points: readonly LonLat[]): string[] => flawsOf([segmentThrough(points)]).map((flaw) => `${flaw.kind} ${flaw.first}-${flaw.last}`);

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
    expect(flaws(turtlePoints(ORIGIN, [[0, 300], [90, 300], [270, 300], [180, 300]], 20))).toEqual([]);
    expect(flaws(turtlePoints(ORIGIN, [[0, 500], [180, 500]], 20))).toEqual([]);
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
    const after = (gap: number): LonLat[] => [...road(), ...turtlePoints(from(road().at(-1)!, 80, gap), [[80, 500]], 10)];
    expect(flaws(after(205))).toEqual(['jump 100-101']);
    expect(flaws(after(195))).toEqual([]);
  });

  it('names points more than 200 m apart on a bend, not on a straight or at one corner', () => {
    const bend = turtlePoints(ORIGIN, [[0, 210], [15, 210], [30, 210], [45, 210]], 1000);
    expect(flaws(bend)).toEqual(['sparse-bend 1-2', 'sparse-bend 2-3']);
    expect(flaws(turtlePoints(ORIGIN, [[0, 190], [15, 190], [30, 190], [45, 190]], 1000))).toEqual([]);
    expect(flaws(turtlePoints(ORIGIN, [[0, 400], [0, 400], [80, 400], [80, 400]], 1000))).toEqual([]);
  });

  it('names a standing-still tangle with its length, and cleaning leaves its ends', () => {
    const points = withTangle();
    const indexed = indexCourse(courseThrough(points));
    const [finding] = tangleFindings(indexed, {});
    expect(finding).toMatchObject({ code: 'track-tangle', severity: 'warning', unit: 'm' });
    expect(finding!.measured).toBeGreaterThan(100);
    expect(finding!.where.measure).toBeGreaterThan(480);
    const { segments } = cleaned([segmentThrough(points)]);
    const length = indexCourse(courseThrough([...segments[0]!.lon].map((lon, i) => [lon, segments[0]!.lat[i]!] as const))).course.raw.at(-1)!;
    expect(length).toBeLessThan(1030);
    expect(tangleFindings(indexCourse(courseThrough(road())), {})).toEqual([]);
  });

  it('says each flaw in a sentence with its size, its points and its place', () => {
    const [finding] = flawFindings(flawsOf([segmentThrough(withSpike())]), { file: 'a.gpx' });
    expect(finding).toMatchObject({ code: 'track-spike', where: { file: 'a.gpx' }, unit: 'm' });
    expect(finding!.message).toContain('Point 51 of segment 1');
  });
});
