/** A layout on one screen: stations, items, spacing, findings. */
import type { Analysis } from '../../src/analyse.ts';
import { courseLength } from '../../src/course/course.ts';
import type { Item, LaidDirection, StationLayout } from '../../src/layout/layout.ts';
import type { ItemKind } from '../../src/plan/plan.ts';
import type { RaceSpacing, StationPass } from '../../src/station/station.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { findingsText, oneLine, table } from '../printing.ts';
import { percent } from './snap.ts';

/** The whole layout for people. */
export const layoutText = (analysis: Analysis, units: UnitSystem): string => paragraphs(analysis, units, true);

/** Stations, spacing and findings without the items. */
export const summary = (analysis: Analysis, units: UnitSystem): string => paragraphs(analysis, units, false);

function paragraphs(analysis: Analysis, units: UnitSystem, items: boolean): string {
  const stations =
    analysis.stations.length === 0
      ? ['The plan has no stations yet.']
      : [stationTable(analysis, units), ...(items ? [itemTable(analysis, units)] : [])];
  return `${[heading(analysis, units), ...stations, spacingTable(analysis, units), `${findingsText(analysis.findings)}\n${CAUTION}`].join('\n\n')}\n`;
}

function heading({ plan, courses }: Analysis, units: UnitSystem): string {
  const lengths = courses.map(({ course }) => `${oneLine(course.name)} ${formatMeasure(courseLength(course), units)}`);
  return [oneLine(plan.name), ...lengths].filter((part) => part !== '').join(' · ');
}

/** One line for each direction in which runners come. */
function stationTable({ plan, stations, spacing }: Analysis, units: UnitSystem): string {
  const head = [
    'Station',
    'Name',
    ...plan.races.map((race) => ` ${race.name}`),
    ' Leg',
    'Side',
    ' Sure',
    ' Sign before mark',
    ' By wheel',
    'Wording',
  ];
  const rows = stations.flatMap((station) => {
    if (station.directions.length === 0)
      return [[station.id, station.name, ...plan.races.map(() => '–'), '–', 'off the course', '', '', '', '']];
    return station.directions.map((direction, k) => {
      const passes = direction.passes.map((index) => station.passes[index]!).filter((pass) => pass.served);
      const distances = plan.races.map(
        (race) =>
          passes
            .filter((pass) => pass.race === race.id)
            .map((pass) => formatMeasure(pass.measure, units))
            .join(', ') || '–',
      );
      const first = passes[0];
      return [
        k === 0 ? station.id : '',
        k === 0 ? station.name : '  other way',
        ...distances,
        legOf(station, first, spacing, units),
        ...sideCells(station, direction),
        ...signCells(direction, units),
      ];
    });
  });
  return table(head, rows);
}

/** The leg that ends at a pass. */
function legOf(
  { id }: StationLayout,
  pass: StationPass | undefined,
  spacing: readonly RaceSpacing[],
  units: UnitSystem,
): string {
  const leg = spacing
    .find(({ race }) => race === pass?.race)
    ?.legs.find(({ to, end }) => to === id && end === pass?.measure);
  return leg === undefined ? '–' : formatLength(leg.length, units, 'long');
}

/** Side with how sure the pin alone makes it: a declared side rules. */
function sideCells({ declared, passes }: StationLayout, { side, passes: indices }: LaidDirection): [string, string] {
  const pass = passes[indices[0]!]!;
  if (declared === null) return [side, percent(pass.confidence)];
  return [side, pass.side === side ? percent(pass.confidence) : pass.side === 'unclear' ? 'declared' : 'contradicted'];
}

function signCells({ items }: LaidDirection, units: UnitSystem): [string, string, string] {
  const sign = items.find((item) => item.kind === 'sign');
  if (sign === undefined) return ['–', '–', ''];
  if (sign.at[0] === null) return [formatLength(-sign.along[0], units, 'wheel'), 'no place', sign.wording ?? ''];
  return [formatLength(-sign.along[0], units, 'wheel'), wheelText(sign, units), sign.wording ?? ''];
}

function wheelText({ wheel, wheelMargin }: Item, units: UnitSystem): string {
  if (wheel === null) return 'folds';
  const [whole, unit] = formatLength(-wheel[0], units, 'wheel', 0).split(' ');
  return `${whole} ± ${formatLength(Math.ceil(wheelMargin), units, 'wheel', 0).split(' ')[0]} ${unit}`;
}

const TABLES: readonly ItemKind[] = ['gel', 'sportsDrink', 'water', 'trash'];

/** From and to of each stretch, from the chalk mark on, a minus upstream. */
function itemTable({ stations }: Analysis, units: UnitSystem): string {
  const unit = units === 'metric' ? 'm' : 'ft';
  const head = ['Station', ' Gel', ' Sports drink', ' Water', ' Trash', ' Boxes', 'Side'];
  const rows = stations.flatMap((station) =>
    station.directions.map((direction, k) => {
      const cells = TABLES.map((kind) =>
        stretchText(
          direction.items.find((item) => item.kind === kind),
          units,
        ),
      );
      const boxes = direction.items.find((item) => item.kind === 'trash')?.boxes?.length;
      return [k === 0 ? station.id : '', ...cells, boxes === undefined ? '–' : String(boxes), direction.side];
    }),
  );
  return `Tables and trash, ${unit} of course distance from the chalk mark (a minus: before it)\n${table(head, rows)}`;
}

function stretchText(item: Item | undefined, units: UnitSystem): string {
  if (item === undefined) return '–';
  const [from, to] = item.along.map((metres) => formatLength(metres, units, 'table', 1).split(' ')[0]!);
  return `${from} to ${to}${item.at.includes(null) ? ' (no place)' : ''}`;
}

function spacingTable({ plan, stations, spacing }: Analysis, units: UnitSystem): string {
  const name = (id: string): string =>
    id === 'start' || id === 'finish' ? id : (stations.find((station) => station.id === id)?.id ?? id);
  const rows = spacing.map(({ race, legs, longest, shortest, mean }) => {
    const most = legs.find(({ length }) => length === longest)!;
    const stops = legs.length - 1;
    return [
      plan.races.find(({ id }) => id === race)?.name ?? race,
      String(stops),
      formatLength(longest, units, 'long'),
      `${name(most.from)} to ${name(most.to)}`,
      formatLength(shortest, units, 'long'),
      formatLength(mean, units, 'long'),
    ];
  });
  return table(['Spacing', ' Stops', ' Longest leg', '', ' Shortest', ' Mean'], rows);
}
