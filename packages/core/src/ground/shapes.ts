/** Shapes of what the matching is given: grounds with positions that can be measured, and what it gave itself. */
import {
  type Shape,
  type Wrong,
  aText,
  anything,
  finite,
  listOf,
  orNull,
  recordOf,
  refuse,
  remembered,
  tableOf,
} from '../wants.ts';
import type { GroundAlong, Junction, StreetStretch } from './along.ts';
import type { Ground, GroundLine } from './ground.ts';
import { isGround } from './groundText.ts';

const wrong = (path: string, expected: string, found: unknown): Wrong => ({ path, expected, found, range: true });

/** What is wrong with the positions of a line: none, not as many of each, or no places on Earth. */
function wrongLine(path: string, { lon, lat }: GroundLine, nodes: number = lon.length): Wrong | null {
  const found = `lon of ${lon.length}, lat of ${lat.length}${nodes === lon.length ? '' : `, nodes of ${nodes}`}`;
  if (lon.length === 0 || lat.length !== lon.length || nodes !== lon.length)
    return wrong(path, 'positions in columns of equal length', found);
  const bad = lon.findIndex((each, i) => !(Math.abs(each) <= 360 && Math.abs(lat[i]!) <= 90));
  return bad < 0 ? null : wrong(`${path}.lon[${bad}]`, 'a position in degrees', `[${lon[bad]}, ${lat[bad]}]`);
}

function wrongPlaces({ ways, areas, points }: Ground): Wrong | null {
  for (const [k, way] of ways.entries()) {
    const found = wrongLine(`ways[${k}]`, way, way.nodes.length);
    if (found !== null) return found;
  }
  for (const [k, { rings }] of areas.entries())
    for (const [i, ring] of rings.entries()) {
      const found = wrongLine(`areas[${k}].rings[${i}]`, ring);
      if (found !== null) return found;
    }
  const bad = points.findIndex(({ lon, lat }) => !(Math.abs(lon) <= 360 && Math.abs(lat) <= 90));
  return bad < 0
    ? null
    : wrong(`points[${bad}]`, 'a position in degrees', `[${points[bad]!.lon}, ${points[bad]!.lat}]`);
}

const measurable: Shape = remembered((value) => isGround(value) ?? wrongPlaces(value as Ground));

/** Refuses what is no ground, or has positions that cannot be measured. */
export function wantGround(who: string, value: unknown): void {
  const found = measurable(value);
  if (found !== null) refuse(who, 'ground', found);
}

/** What `groundAlong` gives, as far as places in words are made of it. */
export const isGroundAlong: Shape = remembered(
  recordOf<Pick<GroundAlong, 'streets' | 'junctions'>>('what groundAlong returns', {
    streets: listOf(
      recordOf<StreetStretch>('a stretch of street', {
        from: finite,
        to: finite,
        way: aText,
        name: orNull(aText),
        tags: tableOf(aText),
      }),
    ),
    junctions: listOf(
      recordOf<Pick<Junction, 'measure' | 'names' | 'node'>>('a junction', {
        measure: finite,
        node: anything,
        names: listOf(aText),
      }),
    ),
  }),
);
