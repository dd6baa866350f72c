/**
 * A station that serves runners who come against each other. The tables lie on one side of each
 * direction's line. On different sides (left of one, right of the other) they lie beyond both
 * lines: one flow runs between the other and the tables, and whoever runs farther off must cross
 * it. On the same side of both (right and right) they lie between the two lines, and nobody
 * crosses. Where both run on one line, keeping left or right decides who crosses, but one does.
 */
import { type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres, named } from './check.ts';
import { courseOf, linesTell, runsAgainst } from './standing.ts';

/** Two ways nearer than this, metres, are drawn as one line. */
const ONE_LINE = 0.1;

/** Directions with served passes that run against the lead. */
function against({
  directions,
  passes,
}: StationLayout): { readonly lead: LaidDirection; readonly others: readonly LaidDirection[] } | null {
  const served = directions.filter((direction) => direction.passes.some((k) => passes[k]!.served));
  const lead = served.find((direction) => direction.lead);
  return lead === undefined
    ? null
    : { lead, others: served.filter((direction) => runsAgainst(direction.azimuthDeg, lead.azimuthDeg)) };
}

const tablesInOrder = ({ items }: LaidDirection): string =>
  items
    .filter(isTable)
    .map(({ kind }) => itemWord(kind).toLowerCase())
    .join(', then ');

const races = (direction: LaidDirection, { passes }: StationLayout): string =>
  [
    ...new Set(
      direction.passes
        .map((k) => passes[k]!)
        .filter(({ served }) => served)
        .map(({ race }) => `"${race}"`),
    ),
  ].join(', ');

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
        const message = `${named(station)} serves runners who come against each other: the lead's meet ${tablesInOrder(lead)}; those of race ${races(direction, station)} at ${metres(direction.measure)} meet ${tablesInOrder(direction)}. Give each way tables of its own, or brief the crew and call out what is on each table.`;
        return {
          message,
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
  (layout) =>
    layout.stations.flatMap((station) => {
      const both = against(station);
      return (both?.others ?? []).flatMap((other) => crossing(both!.lead, other, station, layout));
    }),
);

function crossing(lead: LaidDirection, other: LaidDirection, station: StationLayout, layout: Layout): Found[] {
  const unclear = lead.side === 'unclear' || other.side === 'unclear';
  if (lead.side === other.side && !unclear) return [];
  const offset = ({ passes, measure }: LaidDirection): number =>
    Math.abs(passes.map((k) => station.passes[k]!).find((pass) => pass.measure === measure)!.offset);
  // How much farther from the tables the other direction's line runs than the lead's.
  const apart = offset(other) - offset(lead);
  const farther = apart > 0 ? other : lead;
  const lines = [lead, other].map(({ course }) => courseOf(layout, course).course);
  const who =
    Math.abs(apart) > ONE_LINE && linesTell(apart, lines[0]!, lines[1]!, station.practice)
      ? `those of race ${races(farther, station)} at ${metres(farther.measure)} run ${metres(Math.abs(apart))} farther from the tables and must cross the others`
      : 'the two ways run on one road, and one of them must cross the other to reach the tables';
  const doubt = unclear
    ? `The side is unclear, so this check cannot tell; if the tables stand beyond both lines, `
    : '';
  const message = `${named(station)} serves runners who come against each other: ${doubt}${who}. Serve one way only, or set tables on both sides or between the two ways; race officials and police decide how flows are parted.`;
  const where = { ...atStation(station, 'passes'), course: other.course, race: other.race, measure: other.measure };
  return [{ message, where, measured: Math.abs(apart), unit: 'm', ...(unclear ? { cannotTell: true as const } : {}) }];
}
