/**
 * A station that serves runners who come against each other. The tables lie on one side of each
 * direction's line. On different sides (left of one, right of the other) they lie beyond both
 * lines: one flow runs between the other and the tables, and whoever runs farther off must cross
 * it. On the same side of both (right and right) they lie between the two lines, and nobody
 * crosses. Where both run on one line, keeping left or right decides who crosses, but one does. A station that serves
 * one way only has the same trouble where the other way's line is drawn between it and its runners; and two stations, one for
 * each way, where both stand on one kerb of a road that is run both ways: `oneKerb.ts`.
 */
import { type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import type { ItemKind } from '../kinds.ts';
import type { PassAt } from '../text/params/review.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, doubt } from './check.ts';
import { againstOnRoad } from './flowsShareWidth.ts';
import { oneKerb } from './oneKerb.ts';
import { courseOf } from './standing.ts';
import { ONE_LINE, linesTell, runsAgainst } from '../station/sides.ts';

/** Directions with served passes that run against the lead. */
function against({
  directions,
  passes,
}: StationLayout): { readonly lead: LaidDirection; readonly others: readonly LaidDirection[] } | null {
  const served = directions.filter((direction) => direction.passes.some((k) => passes[k]!.served));
  const lead = leadOf({ directions: served });
  return lead === undefined
    ? null
    : { lead, others: served.filter((direction) => runsAgainst(direction.azimuthDeg, lead.azimuthDeg)) };
}

const tablesInOrder = ({ items }: LaidDirection): ItemKind[] => items.filter(isTable).map(({ kind }) => kind);

/** Each race that a direction serves, by the course distance of its first served pass in it. */
export function passesServed(direction: LaidDirection, { passes }: StationLayout): PassAt[] {
  const served = direction.passes.map((k) => passes[k]!).filter((pass) => pass.served);
  return served
    .filter(({ race }, k) => served.findIndex((one) => one.race === race) === k)
    .map(({ race, measure }) => ({ race, measure }));
}

export const servedBothWays: Check = check(
  {
    code: 'served-both-ways',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) =>
      (against(station)?.others ?? []).map((direction) => {
        const { lead } = against(station)!;
        return {
          params: {
            lead: tablesInOrder(lead),
            other: tablesInOrder(direction),
            passes: passesServed(direction, station),
          },
          where: {
            ...atStation(station, 'passes'),
            course: direction.course,
            race: direction.race,
            measure: direction.measure,
          },
        };
      }),
    ),
);

export const crossesFlow: Check = check(
  {
    code: 'crosses-flow',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) => [
    ...layout.stations.flatMap((station) => {
      const both = against(station);
      if (both === null) return [];
      const served = both.others.flatMap((other) => crossing(both.lead, other, station, layout));
      return served.length > 0 || both.others.length > 0 ? served : unservedBetween(both.lead, station, layout);
    }),
    ...oneKerb(layout),
  ],
);

/** Runners who are not served and come the other way between the served ones and their tables, as the lines are drawn. */
function unservedBetween(lead: LaidDirection, station: StationLayout, layout: Layout): Case<'crosses-flow'>[] {
  const led = lead.passes.map((k) => station.passes[k]!).find(({ measure }) => measure === lead.measure);
  const table = lead.items.find(isTable);
  if (led === undefined || table === undefined || lead.side === 'unclear') return [];
  // Recorded ways out and back cross each other as their recorders err: they tell nothing of who runs where on one road.
  const isDrawn = (id: string): boolean => courseOf(layout, id).course.drawn !== 'recorded';
  if (!isDrawn(lead.course)) return [];
  const toTables = lead.side === 'left' ? 1 : -1;
  const between = againstOnRoad(station)
    // Both offsets are of one pin, each left of its own way.
    .map((pass) => ({ pass, beside: toTables * (led.offset + pass.offset) }))
    .filter(
      ({ pass, beside }) =>
        !pass.served && isDrawn(pass.course) && beside > ONE_LINE && beside < Math.abs(table.offset),
    )
    .sort((a, b) => a.beside - b.beside);
  const [first] = between;
  if (first === undefined) return [];
  const races = between.filter(({ pass }, k) => between.findIndex((one) => one.pass.race === pass.race) === k);
  return [
    {
      params: {
        other: races.map(({ pass: { race, measure } }) => ({ race, measure })),
        farther: { passes: passesServed(lead, station), by: first.beside },
        sideUnclear: false,
      },
      where: {
        ...atStation(station),
        course: first.pass.course,
        race: first.pass.race,
        measure: first.pass.measure,
      },
      measured: first.beside,
      unit: 'm',
    },
  ];
}

function crossing(
  lead: LaidDirection,
  other: LaidDirection,
  station: StationLayout,
  layout: Layout,
): Case<'crosses-flow'>[] {
  const unclear = lead.side === 'unclear' || other.side === 'unclear';
  if (lead.side === other.side && !unclear) return [];
  const offset = ({ passes, measure }: LaidDirection): number =>
    Math.abs(passes.map((k) => station.passes[k]!).find((pass) => pass.measure === measure)!.offset);
  // How much farther from the tables the other direction's line runs than the lead's.
  const apart = offset(other) - offset(lead);
  const farther = apart > 0 ? other : lead;
  const lines = [lead, other].map(({ course }) => courseOf(layout, course).course);
  const told = Math.abs(apart) > ONE_LINE && linesTell(apart, lines[0]!, lines[1]!, station.practice);
  return [
    {
      params: {
        other: passesServed(other, station),
        farther: told ? { passes: passesServed(farther, station), by: Math.abs(apart) } : null,
        sideUnclear: unclear,
      },
      where: { ...atStation(station, 'passes'), course: other.course, race: other.race, measure: other.measure },
      measured: Math.abs(apart),
      unit: 'm',
      ...doubt(!unclear),
    },
  ];
}
