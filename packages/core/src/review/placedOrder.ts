/** Side and order of recorded points, told only where their errors allow an answer. */
import type { Finding } from '../finding.ts';
import type { Matched } from './placedMatch.ts';
import { type OnCourse, type PlacedGround, marginOf, recorded } from './placedGround.ts';
import { makePlaced } from './placedPoint.ts';
import { type Item, isTable } from '../layout/layout.ts';

interface Standing {
  readonly item: Item;
  readonly on: OnCourse & Pick<Matched, 'end'>;
}

/** Every recorded point of the direction, its items in the plan's order. */
function standing(ground: PlacedGround): Standing[] {
  return [...ground.direction.items]
    .sort((a, b) => a.from - b.from)
    .flatMap((item) => recorded(item.kind, ground).map((on) => ({ item, on })));
}

/** Points surely on the other side than the plan has them, and one note on those whose side cannot be told. */
export function sideFindings(ground: PlacedGround): Finding[] {
  const { station, direction } = ground;
  // Tables are the same things in every direction; their side is told once.
  const own = standing(ground).filter(({ item }) => (direction.lead || !isTable(item)) && item.side !== 'unclear');
  const wrong = own.flatMap(({ item, on }): Finding[] => {
    if (on.side === 'unclear' || item.side === 'unclear' || on.side === item.side) return [];
    const where = { ...on.point.where, station: station.id, course: direction.course };
    const params = {
      is: 'wrong',
      item: item.kind,
      side: on.side,
      planned: item.side,
      confidence: on.confidence,
    } as const;
    return [
      makePlaced('placed-side', params, {
        severity: 'warning',
        where: { ...where, item: item.kind, measure: on.measure },
      }),
    ];
  });
  const unclear = own.filter(({ on }) => on.side === 'unclear');
  if (unclear.length === 0) return wrong;
  const items = [...new Set(unclear.map(({ item }) => item.kind))];
  const where = { ...unclear[0]!.on.point.where, station: station.id, course: direction.course };
  return [...wrong, makePlaced('placed-side', { is: 'unclear', items }, { severity: 'note', where, cannotTell: true })];
}

/** One finding for a direction with items that surely stand in another order than planned. */
export function orderFindings(ground: PlacedGround): Finding[] {
  const { station, direction } = ground;
  const all = standing(ground);
  const wrong = all.flatMap((early, k) =>
    all.slice(k + 1).flatMap((late) => (swapped(early, late, direction.lead) ? [[early, late] as const] : [])),
  );
  const first = wrong[0];
  if (first === undefined) return [];
  const [early, late] = first;
  const by = early.on.measure - late.on.measure;
  const pairs = wrong
    .map(([one, other]) => [other.item.kind, one.item.kind] as const)
    .filter(([a, b], k, of) => of.findIndex(([c, d]) => a === c && b === d) === k);
  const planned = [...new Set(all.map(({ item }) => item.kind))];
  const where = { ...late.on.point.where, station: station.id, course: direction.course };
  return [
    makePlaced(
      'placed-order',
      { pairs, by, planned },
      {
        severity: 'warning',
        where: { ...where, item: late.item.kind, measure: late.on.measure },
        measured: by,
        unit: 'm',
      },
    ),
  ];
}

function swapped(early: Standing, late: Standing, lead: boolean): boolean {
  const bothTables = [early, late].every(({ item }) => isTable(item));
  if (early.item === late.item || (bothTables && !lead)) return false;
  return early.on.measure - late.on.measure > marginOf(early.on.point.r95, late.on.point.r95);
}
