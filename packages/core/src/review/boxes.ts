/** Trash boxes: that there are any, at the set distance, enough of them. */
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { servedOn } from '../layout/stretches.ts';
import { findById, itemOf } from '../plan/lookups.ts';
import { suppliesOf } from '../plan/practice.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, dayCheck } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { tableEnds } from './standing.ts';

/** Rounding that is no deviation, metres. */
const SAME = 1e-6;
/** Bags that one box takes in a day: it is emptied twice (assumption). */
const BAGS = 3;

const handsOutCups = ({ station }: StationLayout): boolean => servedOn(station).some((kind) => kind !== 'gel');

/** Boxes of all directions, whatever their place. */
const boxesOf = ({ directions }: StationLayout): number =>
  directions.reduce((sum, direction) => sum + (itemOf(direction, 'trash')?.boxes?.length ?? 0), 0);

export const boxesMissing: Check = check(
  {
    code: 'boxes-missing',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations
      .filter((station) => handsOutCups(station) && boxesOf(station) === 0)
      .map((station) => ({
        params: { every: station.practice.boxEvery },
        where: { ...atStation(station, 'boxes'), item: 'trash' },
        measured: 0,
        limit: 1,
      })),
);

export const boxDistance: Check = check(
  {
    code: 'box-distance',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions.flatMap((direction) => misplaced(direction, station, layout)),
    ),
);

/** By the first box, else by the last. */
function misplaced(direction: LaidDirection, station: StationLayout, layout: Layout): Case<'box-distance'>[] {
  const trash = itemOf(direction, 'trash');
  const tables = tableEnds(direction);
  if (trash === undefined || tables === null || trash.boxes?.length === 0) return [];
  if (strayedBy(trash, direction, station, layout) !== null) return [];
  const { trashFrom, trashTo, signTolerance } = layout.plan.practice;
  const own = station.station.practice;
  const ends = [
    { end: 'first', measured: trash.from - tables[1], wanted: trashFrom, own: own.trashFrom ?? null },
    { end: 'last', measured: trash.to - tables[1], wanted: trashTo, own: own.trashTo ?? null },
  ] as const;
  const off = ends.find(({ measured, wanted }) => Math.abs(measured - wanted) > signTolerance + SAME);
  if (off === undefined) return [];
  const limit = [off.wanted - signTolerance, off.wanted + signTolerance] as const;
  const byHand = trash.byHand === true;
  const [at, measure] = off.end === 'first' ? [trash.at[0], trash.from] : [trash.at[1], trash.to];
  const where = {
    ...atStation(station, byHand ? 'items/trash' : ''),
    course: direction.course,
    item: 'trash',
    measure,
  };
  return [
    {
      params: { end: off.end, measured: off.measured, limit, byHand, own: off.own },
      where: at === null ? where : { ...where, at },
      measured: off.measured,
      limit,
      unit: 'm',
    },
  ];
}

/** By the day's cups: what is handed out is thrown away, and a bag holds so many (`cupsPerBag`). */
export const boxesFew: Check = dayCheck(
  {
    code: 'boxes-few',
    severity: 'warning',
    source: `${COMMON_PRACTICE}; two changes of each bag are an assumption`,
  },
  (layout, { day }) =>
    layout.stations.flatMap((station) => {
      const boxes = boxesOf(station);
      const { water, sportsDrink } = findById(day.stations, station.id)?.cups ?? { water: 0, sportsDrink: 0 };
      const cups = water + sportsDrink;
      const perBag = suppliesOf(layout.plan, station.station).cupsPerBag;
      const needed = Math.ceil(cups / (perBag * BAGS));
      if (boxes === 0 || boxes >= needed) return [];
      return [
        {
          params: { boxes, needed, cups, perBag, bags: BAGS },
          where: { ...atStation(station, 'boxes'), item: 'trash' },
          measured: boxes,
          limit: needed,
        },
      ];
    }),
);
