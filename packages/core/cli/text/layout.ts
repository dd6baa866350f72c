/** A layout for people: stations, items, spacing, findings. */
import type { Analysis } from '../../src/analyse.ts';
import { courseLength } from '../../src/course/course.ts';
import type { Item, LaidDirection, StationLayout } from '../../src/layout/layout.ts';
import type { ItemKind } from '../../src/plan/plan.ts';
import type { RaceSpacing, StationPass } from '../../src/station/station.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { type View, findingsText } from '../findings.ts';
import { table } from '../tables.ts';
import { NONE, heading, page, section } from './blocks.ts';
import { declaredText } from './sides.ts';

/** The whole layout for people. */
export function layoutText(analysis: Analysis, view: View): string {
  const { plan, courses, stations, findings } = analysis;
  const lengths = courses.map(({ course }) => `${course.name} ${formatMeasure(courseLength(course), view.units)}`);
  const laid =
    stations.length === 0
      ? ['The plan has no stations yet.']
      : [stationTable(analysis, view), itemTable(analysis, view), spacingTable(analysis, view)];
  return page([heading([plan.name, ...lengths], view.screen), ...laid, findingsText(findings, view)], view.screen);
}

const HEAD_BEFORE = ['Station', 'Id'];
const HEAD_BEHIND = [' Leg', 'Side', ' Sign to mark', ' by wheel', 'Sign'];

/** One line for each direction in which runners come. */
function stationTable({ plan, stations, spacing }: Analysis, { units, screen }: View): string {
  const head = [...HEAD_BEFORE, ...plan.races.map((race) => ` ${race.name}`), ...HEAD_BEHIND];
  const rows = stations.flatMap((station) => {
    if (station.directions.length === 0)
      return [[station.name, station.id, ...plan.races.map(() => NONE), NONE, 'off the course', NONE, NONE, '']];
    return station.directions.map((direction, k) => {
      const passes = direction.passes.map((index) => station.passes[index]!).filter((pass) => pass.served);
      const distances = plan.races.map(
        (race) =>
          passes
            .filter((pass) => pass.race === race.id)
            .map((pass) => formatMeasure(pass.measure, units))
            .join(', ') || NONE,
      );
      return [
        ...(k === 0 ? [station.name, station.id] : ['↳ other way', '']),
        ...distances,
        legOf(station, passes[0], spacing, units),
        declaredText(direction.side, station.declared, station.passes[direction.passes[0]!]!),
        ...signCells(direction, units),
      ];
    });
  });
  return section('Stations', table(head, rows, screen), screen, STATIONS_HINT);
}

const STATIONS_HINT =
  'Where each race passes, the leg that ends there, and how far the sign stands before the chalk mark, which is on the kerb beside the pin: along the course, and by measuring wheel.';

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
  return leg === undefined ? NONE : formatLength(leg.length, units, 'long');
}

function signCells({ items }: LaidDirection, units: UnitSystem): [string, string, string] {
  const sign = items.find((item) => item.kind === 'sign');
  if (sign === undefined) return [NONE, NONE, ''];
  const wheel = sign.at[0] === null ? 'no place' : wheelText(sign, units);
  const ahead = -sign.along[0];
  return [formatLength(ahead, units, 'wheel', ahead < 10 ? 1 : 0), wheel, sign.wording ?? ''];
}

function wheelText({ wheel, wheelMargin }: Item, units: UnitSystem): string {
  if (wheel === null) return 'folds';
  const [whole, unit] = formatLength(-wheel[0], units, 'wheel', 0).split(' ');
  return `${whole} ± ${formatLength(Math.ceil(wheelMargin), units, 'wheel', 0).split(' ')[0]} ${unit}`;
}

const TABLES: readonly ItemKind[] = ['gel', 'sportsDrink', 'water', 'trash'];

/** From and to of each stretch, from the chalk mark on, a minus upstream. */
function itemTable({ stations }: Analysis, { units, screen }: View): string {
  const unit = units === 'metric' ? 'metres' : 'feet';
  const head = ['Station', ' Gel', ' Sports drink', ' Water', ' Trash', ' Boxes', 'Side'];
  const rows = stations.flatMap((station) =>
    station.directions.map((direction, k) => {
      const itemOf = (kind: ItemKind): Item | undefined => direction.items.find((item) => item.kind === kind);
      const boxes = itemOf('trash')?.boxes?.length;
      return [
        k === 0 ? station.name : '↳ other way',
        ...TABLES.map((kind) => stretchText(itemOf(kind), units)),
        boxes === undefined ? NONE : String(boxes),
        direction.side,
      ];
    }),
  );
  const title = `Tables and trash, ${unit} from the chalk mark`;
  return section(title, table(head, rows, screen), screen, 'Along the course; a minus stands before the mark.');
}

function stretchText(item: Item | undefined, units: UnitSystem): string {
  if (item === undefined) return NONE;
  const [from, to] = item.along.map((metres) => formatLength(metres, units, 'table', 1).split(' ')[0]!);
  return `${from} to ${to}${item.at.includes(null) ? ' (no place)' : ''}`;
}

function spacingTable({ spacing }: Analysis, { units, names, screen }: View): string {
  const rows = spacing.map(({ race, legs, longest, shortest, mean }) => {
    const most = legs.find(({ length }) => length === longest)!;
    return [
      names.race(race),
      String(legs.length - 1),
      formatLength(longest, units, 'long'),
      `${names.station(most.from)} to ${names.station(most.to)}`,
      formatLength(shortest, units, 'long'),
      formatLength(mean, units, 'long'),
    ];
  });
  const head = ['Race', ' Stops', ' Longest leg', 'Where', ' Shortest leg', ' Mean leg'];
  return section('Spacing', table(head, rows, screen), screen);
}
