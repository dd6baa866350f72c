/**
 * The layout as a table of comma-separated values: one row for each place on the ground, in course order, as the
 * placement list has them. Lengths in metres to 1 mm, positions to 1e-8 of a degree (1 mm), longitude first.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import type { StreetPlace } from '../ground/along.ts';
import type { Item, LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { offsetUncertainty, wheelBetween } from '../layout/wheel.ts';
import type { PlanPoint } from '../plan/plan.ts';
import { type CsvCell, csvText } from './csvText.ts';
import { type Peg, pegsOf } from '../layout/pegs.ts';
import { numberOf } from '../layout/layout.ts';
import { want } from '../wants.ts';
import { isLayout } from '../layout/shapes.ts';

const COLUMNS = [
  'station number',
  'station',
  'name',
  'race',
  'course',
  'lead direction',
  'item',
  'end',
  'course distance (m)',
  'along from chalk mark (m)',
  'side',
  'wheel from chalk mark (m)',
  'wheel margin (m)',
  'longitude',
  'latitude',
  'wording',
  'street',
  'after cross-street',
  'before cross-street',
] as const;

/** Cells from `item` on. */
interface Placed {
  readonly item: string;
  readonly end: string | null;
  readonly measure: number | null;
  readonly along: number | null;
  readonly side: string | null;
  readonly wheel: number | null;
  readonly margin: number | null;
  readonly at: LonLat | null;
  readonly wording: string | null;
  readonly street?: StreetPlace | undefined;
}

const rounded = (value: number | null, decimals: number): number | null =>
  value === null ? null : Number(value.toFixed(decimals)) + 0;

const placedCells = ({ item, end, measure, along, side, wheel, margin, at, wording, street }: Placed): CsvCell[] => [
  item,
  end,
  rounded(measure, 3),
  rounded(along, 3),
  side,
  rounded(wheel, 3),
  rounded(margin, 3),
  rounded(at?.[0] ?? null, 8),
  rounded(at?.[1] ?? null, 8),
  wording,
  street?.street ?? null,
  street?.after ?? null,
  street?.before ?? null,
];

/** A direction of a station on its course. */
interface Met {
  readonly station: StationLayout;
  readonly direction: LaidDirection;
  readonly indexed: IndexedCourse;
}

/**
 * The layout as a table: CSV (RFC 4180, CRLF, a header, UTF-8): the ends of each item, each box, the chalk mark (`station`) and
 * the station's points, course by course as the runners meet them; stations off every course last. What has no place
 * on the ground has empty positions. Formulas in names are made harmless as `csvText` says; numbers stay numbers.
 * @example
 * ```ts
 * import { analyse, readPlan, toCsv } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const [header, sign] = toCsv(result.value).split('\r\n');
 * header?.slice(0, 32); // → 'station number,station,name,race'
 * sign?.slice(0, 36); // → '1,s1,s1,r,c,yes,sign,,1908.56,-91.44'
 * ```
 */
export function toCsv(layout: Layout): string {
  want('toCsv', 'layout', isLayout, layout);
  const met = layout.courses.flatMap((indexed) =>
    layout.stations
      .flatMap((station) =>
        station.directions
          .filter(({ course }) => course === indexed.course.id)
          .map((direction): Met => ({ station, direction, indexed })),
      )
      .toSorted((a, b) => a.direction.measure - b.direction.measure),
  );
  const off = layout.stations.filter(({ directions }) => directions.length === 0);
  return csvText([COLUMNS, ...met.flatMap((one) => rowsOf(one, layout)), ...off.flatMap(offCourse)]);
}

const stationCells = (station: StationLayout): CsvCell[] => [numberOf(station), station.id, station.name];

function rowsOf({ station, direction, indexed }: Met, { plan }: Layout): CsvCell[][] {
  const races = plan.races
    .filter(({ id }) => direction.passes.some((k) => station.passes[k]!.race === id))
    .map(({ name }) => name)
    .join('; ');
  const shared = [...stationCells(station), races, indexed.course.name, direction.lead];
  const pegs = pegsOf(station, direction, indexed)
    .filter(({ item }) => item !== null || direction.lead)
    .map((peg) => ofPeg(peg, station));
  const boxes = direction.items.flatMap((item) => boxesOf(item, station, direction, indexed));
  const laid = [...pegs, ...boxes].toSorted((a, b) => a.measure! - b.measure!);
  const points = direction.lead ? station.station.points.map(ofPoint) : [];
  return [...laid, ...points].map((placed) => [...shared, ...placedCells(placed)]);
}

const ENDS = { whole: null, first: 'from', last: 'to' } as const;

const ofPeg = ({ item, end, measure, along, fromMark, at }: Peg, station: StationLayout): Placed => ({
  item: item?.kind ?? 'station',
  end: ENDS[end],
  measure,
  along,
  side: item?.side ?? null,
  wheel: fromMark.length,
  margin: fromMark.length === null ? null : fromMark.margin,
  at,
  wording: item?.wording ?? null,
  street: item === null ? station.street : item.street,
});

function boxesOf(
  { boxes = [], side, offset, street }: Item,
  { station }: StationLayout,
  { measure: pin }: LaidDirection,
  { course }: IndexedCourse,
): Placed[] {
  return boxes.map(({ measure, at }, k) => {
    const reading = wheelBetween(course, pin, measure, offset, offsetUncertainty(course, station.width));
    const wheel = reading?.length ?? null;
    return {
      item: 'box',
      end: String(k + 1),
      measure,
      along: measure - pin,
      side,
      wheel,
      margin: wheel === null ? null : reading!.margin,
      at,
      wording: null,
      street,
    };
  });
}

const BARE = { end: null, measure: null, along: null, side: null, wheel: null, margin: null } as const;

const ofPoint = ({ kind, at, name, street }: PlanPoint): Placed => ({
  ...BARE,
  item: kind,
  at,
  wording: [name, street].filter((text) => text !== undefined).join(', ') || null,
});

const offCourse = (station: StationLayout): CsvCell[][] =>
  [
    { ...BARE, item: 'station', at: station.at, wording: null, street: station.street },
    ...station.station.points.map(ofPoint),
  ].map((placed) => [...stationCells(station), null, null, null, ...placedCells(placed)]);
