/** Courses laid on the ways of a town, true and with a recorder's errors: the streets found are held to those they were laid on. */
import { describe, expect, it } from 'vitest';
import { indexCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { fromEastNorth } from '../geodesy/frame.ts';
import { segmentLength } from '../geodesy/segment.ts';
import { courseThrough, generator } from '../testing/courses.ts';
import { type Walk, gridTown, randomWalk } from '../testing/gridTown.ts';
import type { GroundAlong, StreetPlace } from './along.ts';
import type { Ground, GroundWay } from './ground.ts';
import { groundAlong } from './groundAlong.ts';
import { streetPlace } from './streetPlace.ts';

const town = gridTown(7);

/** Errors in metres of the points of a recorded track: each by itself within a circle, or wandering as receivers do. */
type Errors = (count: number, most: number, random: () => number) => [number, number][];
const scattered: Errors = (count, most, random) =>
  Array.from({ length: count }, () => {
    const [away, angle] = [most * Math.sqrt(random()), 2 * Math.PI * random()];
    return [away * Math.cos(angle), away * Math.sin(angle)];
  });
/** A sum of slow waves, so that errors last over some 50 to 200 m, up to `most` metres. */
const wandering: Errors = (count, most, random) => {
  const waves = [5, 9, 14, 20].map((length) => ({ length, a: random() * 7, b: random() * 7 }));
  return Array.from({ length: count }, (_, k) => {
    const sum = (phase: 'a' | 'b'): number =>
      waves.reduce((all, wave) => all + Math.sin((2 * Math.PI * k) / wave.length + wave[phase]), 0) / waves.length;
    return [(most * sum('a')) / Math.SQRT2, (most * sum('b')) / Math.SQRT2];
  });
};

/** A course on a walk: a point every 10 m, moved by errors; of each step between two points the step of the walk, and the measure of its middle. */
interface Laid {
  readonly along: GroundAlong;
  readonly steps: readonly { readonly of: number; readonly middle: number; readonly length: number }[];
}

function lay(ground: Ground, walk: Walk, errors: Errors, most: number, random: () => number): Laid {
  const points: LonLat[] = [walk.points[0]!];
  const of: number[] = [];
  for (let i = 0; i < walk.ways.length; i++) {
    const [[lon0, lat0], [lon1, lat1]] = [walk.points[i]!, walk.points[i + 1]!];
    const pieces = Math.max(1, Math.round(segmentLength(lon0, lat0, lon1, lat1) / 10));
    for (let k = 1; k <= pieces; k++) {
      points.push([lon0 + ((lon1 - lon0) * k) / pieces, lat0 + ((lat1 - lat0) * k) / pieces]);
      of.push(i);
    }
  }
  const moved = errors(points.length, most, random).map(([east, north], k) => fromEastNorth(points[k]!, east, north));
  const course = courseThrough(moved);
  let gone = 0;
  const steps = of.map((step, k) => {
    const length = segmentLength(...moved[k]!, ...moved[k + 1]!);
    gone += length;
    return { of: step, middle: gone - length / 2, length };
  });
  return { along: groundAlong(indexCourse(course), ground), steps };
}

/** The name by which people know a way of the town: that of the street for the pavement beside it. */
const nameOf = ({ tags }: GroundWay): string | null =>
  tags['name'] ?? (tags['footway'] === 'sidewalk' ? 'Street 8' : null);

/** The share of the course's length on which the street's name, and the way itself, are those it was laid on. */
function rightShares(walk: Walk, { along, steps }: Laid): { names: number; ways: number } {
  const [right, all] = [{ names: 0, ways: 0 }, { length: 0 }];
  for (const { of, middle, length } of steps) {
    const street = along.streets.find(({ from, to }) => from <= middle && middle <= to);
    const way = walk.ways[of]!;
    all.length += length;
    if (street !== undefined && street.name === nameOf(way)) right.names += length;
    if (street?.way === way.id) right.ways += length;
  }
  return { names: right.names / all.length, ways: right.ways / all.length };
}

describe('streets along a course', () => {
  it.each([
    ['on the ways themselves', scattered, 0, 0.999],
    ['with scattered errors up to 2 m', scattered, 2, 0.99],
    ['with scattered errors up to 5 m', scattered, 5, 0.98],
    ['with wandering errors up to 5 m', wandering, 5, 0.98],
  ] as const)('are those that it was laid on, %s', (_, errors, most, least) => {
    const random = generator(most * 31 + (errors === wandering ? 5 : 1));
    for (let k = 0; k < 8; k++) {
      const walk = randomWalk(town, 4000, random);
      const laid = lay(town, walk, errors, most, random);
      expect(rightShares(walk, laid).names).toBeGreaterThanOrEqual(least);
      expect(laid.along.offMap).toEqual([]);
    }
  });

  it('follow one another in running order, within the course', () => {
    const random = generator(3);
    const { along } = lay(town, randomWalk(town, 6000, random), scattered, 3, random);
    for (const [k, { from, to }] of along.streets.entries()) {
      expect(to).toBeGreaterThan(from);
      expect(from).toBeGreaterThanOrEqual(along.streets[k - 1]?.to ?? 0);
    }
    const measures = along.junctions.map(({ measure }) => measure);
    expect(measures).toEqual(measures.toSorted((a, b) => a - b));
  });
});

/** By the walk alone: names of the streets at its nodes, going on from a step as long as its street's name stays; `undefined` where the walk ends first. */
function crossBy(ground: Ground, walk: Walk, step: number, way: 1 | -1): string | null | undefined {
  const street = nameOf(walk.ways[step]!);
  for (let i = step; ; i += way) {
    const next = walk.ways[i + way];
    if (next === undefined) return undefined;
    if (nameOf(next) !== street) return nameOf(next);
    const node = walk.nodes[way > 0 ? i + 1 : i]!;
    const crossing = ground.ways.filter(
      ({ nodes, tags }) => nodes.includes(node) && (tags['name'] ?? street) !== street,
    );
    // People name the street before the tunnel or bridge that begins at the same corner.
    const [first] = crossing.sort((a, b) => Number('layer' in a.tags) - Number('layer' in b.tags));
    if (first !== undefined) return first.tags['name']!;
  }
}

describe('cross-streets', () => {
  it.each([0, 3])('of 50 stations are those that the walk passes before and after, with errors up to %i m', (most) => {
    const random = generator(11 + most);
    let stations = 0;
    while (stations < 50) {
      const walk = randomWalk(town, 3000, random);
      const { along, steps } = lay(town, walk, scattered, most, random);
      for (let k = 5; k < steps.length && stations < 50; k += 23) {
        const { of, middle } = steps[k]!;
        const street = nameOf(walk.ways[of]!);
        // Within 10 m of a node a station may as well be behind it.
        if (street === null || steps[k - 1]?.of !== of || steps[k + 1]?.of !== of) continue;
        const [after, before] = [crossBy(town, walk, of, -1), crossBy(town, walk, of, 1)];
        if (after === undefined || before === undefined) continue;
        expect({ k, ...streetPlace(along, middle) }).toEqual({ k, street, after, before } satisfies StreetPlace & {
          k: number;
        });
        stations++;
      }
    }
  });
});
