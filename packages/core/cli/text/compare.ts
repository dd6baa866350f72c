/** What changes between two versions of a plan, for people. */
import type { Finding } from '../../src/finding.ts';
import type { Change, ChangedItem, Comparison, MovedStation } from '../../src/improve/compare.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { itemWord } from '../../src/station/wording.ts';
import { formatLength } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { findingsText, oneLine, table } from '../printing.ts';

/** The name of the plan without any variant. */
export const AS_PLANNED = 'as planned';

export function compareText(comparison: Comparison, plan: Plan, units: UnitSystem): string {
  const { variants, stations, items, findings } = comparison;
  const head = `${oneLine(plan.name)}: ${variants.map(oneLine).join(' → ')}`.replace(/^: /u, '');
  const moved = stations.length === 0 ? 'No station stands elsewhere.' : movedTable(stations, units);
  const laid = items.length === 0 ? [] : [itemTable(items, units)];
  const parts = [
    head,
    moved,
    spacingTable(comparison, plan, units),
    ...laid,
    findingPart('Gained', findings.gained),
    findingPart('Lost', findings.lost),
  ];
  return `${parts.join('\n\n')}\n${CAUTION}\n`;
}

const placed = ([lon, lat]: MovedStation['from']): string => `${lon.toFixed(6)},${lat.toFixed(6)}`;

const movedTable = (stations: readonly MovedStation[], units: UnitSystem): string =>
  table(
    ['Station', 'Name', ' Moved', 'From', 'To'],
    stations.map(({ id, name, moved, from, to }) => [
      id,
      name,
      formatLength(moved, units, moved < 1000 ? 'wheel' : 'long', 0),
      placed(from),
      placed(to),
    ]),
  );

const long = (metres: number | null, units: UnitSystem): string =>
  metres === null ? '–' : formatLength(metres, units, 'long');

/** Longest and mean of every race, and under it the legs that changed. */
function spacingTable({ spacing, variants }: Comparison, plan: Plan, units: UnitSystem): string {
  const pair = ([before, after]: Change<number | null>): string[] => [long(before, units), long(after, units)];
  const rows = spacing.flatMap(({ race, legs, longest, shortest, mean }) => [
    [plan.races.find(({ id }) => id === race)?.name ?? race, 'longest leg', ...pair(longest)],
    ['', 'shortest leg', ...pair(shortest)],
    ['', 'mean leg', ...pair(mean)],
    ...legs.map(({ from, to, length }) => ['', `${from} to ${to}`, ...pair(length)]),
  ]);
  return table(['Spacing', '', ...variants.map((name) => ` ${oneLine(name)}`)], rows);
}

function itemTable(items: readonly ChangedItem[], units: UnitSystem): string {
  const metres = (value: number | null): string => (value === null ? '–' : formatLength(value, units, 'wheel', 1));
  const rows = items.map(({ station, item, lead, along, wheel, side }) => [
    station,
    `${itemWord(item)}${lead ? '' : ', other way'}`,
    ...along.map(metres),
    ...wheel.map(metres),
    side[0] === side[1] ? (side[0] ?? '') : `${side[0] ?? 'none'} → ${side[1] ?? 'none'}`,
  ]);
  const head = ['Station', 'Item', ' Along before', ' Along after', ' By wheel before', ' By wheel after', 'Side'];
  return `Items laid out otherwise, from the chalk mark to their upstream end (a minus: before it)\n${table(head, rows)}`;
}

const findingPart = (word: string, findings: readonly Finding[]): string =>
  findings.length === 0 ? `${word}: no finding.` : `${word}: ${findingsText(findings)}`;
