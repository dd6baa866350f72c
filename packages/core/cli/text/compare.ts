/** What changes between two versions of a plan, for people. */
import type { Analysis } from '../../src/analyse.ts';
import type { Finding } from '../../src/finding.ts';
import type { Change, ChangedItem, Comparison, MovedStation } from '../../src/improve/compare.ts';
import { itemWord } from '../../src/station/wording.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { type View, countsText, groupsText } from '../findings.ts';
import { oneLine } from '../breaks.ts';
import { table } from '../tables.ts';
import { NONE, heading, page, section } from './blocks.ts';

/** The name of the plan without any variant, in calls and documents. */
export const AS_PLANNED = 'as planned';

const versionName = (name: string): string => (name === AS_PLANNED ? 'main plan' : oneLine(name));

/** `versions`: the analyses that are compared. */
export function compareText(comparison: Comparison, versions: Change<Analysis>, view: View): string {
  const { variants, stations, items, findings } = comparison;
  const { screen } = view;
  const names = variants.map(versionName) as [string, string];
  return page(
    [
      heading([versions[0].plan.name, `${names[0]} → ${names[1]}`], screen),
      stations.length === 0 ? 'No station moves.' : movedTable(stations, versions, names, view),
      spacingTable(comparison, names, view),
      items.length === 0 ? '' : itemTable(items, view),
      ...findingPart('New', findings.gained, view),
      ...findingPart('Resolved', findings.lost, view),
    ],
    screen,
  );
}

/** How far each station moves, and where along each race it stood and stands. */
function movedTable(
  stations: readonly MovedStation[],
  [before, after]: Change<Analysis>,
  variants: Change<string>,
  { units, names, screen }: View,
): string {
  const rows = stations.flatMap(({ id, moved }) => {
    const distance = formatLength(moved, units, moved < 1000 ? 'wheel' : 'long', moved < 1000 ? 0 : 2);
    const races = before.plan.races.map(({ id: race }) => race);
    const passed = races
      .map((race) => [race, measureOf(before, id, race), measureOf(after, id, race)] as const)
      .filter(([, from, to]) => from !== null || to !== null);
    return passed.length === 0
      ? [[names.station(id), distance, 'off the course', NONE, NONE]]
      : passed.map(([race, from, to], k) => [
          ...(k === 0 ? [names.station(id), distance] : ['', '']),
          names.race(race),
          measured(from, units),
          measured(to, units),
        ]);
  });
  const head = ['Station', ' Moves', 'Race', ...variants.map((name) => ` ${name}`)];
  return section('Stations that move', table(head, rows, screen), screen);
}

/** Course distance at which a race first passes a station: one that is served, if any is. */
function measureOf({ stations }: Analysis, id: string, race: string): number | null {
  const passes = stations.find((station) => station.id === id)?.passes.filter((pass) => pass.race === race) ?? [];
  return (passes.find(({ served }) => served) ?? passes[0])?.measure ?? null;
}

const measured = (measure: number | null, units: UnitSystem): string =>
  measure === null ? NONE : formatMeasure(measure, units);

const long = (metres: number | null, units: UnitSystem): string =>
  metres === null ? NONE : formatLength(metres, units, 'long');

/** Longest, shortest and mean leg of every race, and under them the legs that changed. */
function spacingTable({ spacing }: Comparison, variants: Change<string>, { units, names, screen }: View): string {
  const pair = ([before, after]: Change<number | null>): string[] => [long(before, units), long(after, units)];
  const rows = spacing.flatMap(({ race, legs, longest, shortest, mean }) => [
    [names.race(race), 'longest leg', ...pair(longest)],
    ['', 'shortest leg', ...pair(shortest)],
    ['', 'mean leg', ...pair(mean)],
    ...legs.map(({ from, to, length }) => ['', `${names.station(from)} to ${names.station(to)}`, ...pair(length)]),
  ]);
  return section('Spacing', table(['Race', 'Leg', ...variants.map((name) => ` ${name}`)], rows, screen), screen);
}

const ITEMS = ['Station', 'Item', ' Before, along', ' After, along', ' Before, by wheel', ' After, by wheel', 'Side'];

function itemTable(items: readonly ChangedItem[], { units, names, screen }: View): string {
  const metres = (value: number | null): string => (value === null ? NONE : formatLength(value, units, 'wheel', 1));
  const rows = items.map(({ station, item, lead, along, wheel, side }) => [
    names.station(station),
    `${itemWord(item)}${lead ? '' : ', other way'}`,
    ...along.map(metres),
    ...wheel.map(metres),
    side[0] === side[1] ? (side[0] ?? '') : `${side[0] ?? 'none'} → ${side[1] ?? 'none'}`,
  ]);
  const hint = 'From the chalk mark to their upstream end; a minus stands before the mark.';
  return section('Items that move', table(ITEMS, rows, screen), screen, hint);
}

const findingPart = (word: string, findings: readonly Finding[], view: View): readonly string[] =>
  findings.length === 0 ? [`${word}: none`] : [`${word}: ${countsText(findings)}`, ...groupsText(findings, view)];
