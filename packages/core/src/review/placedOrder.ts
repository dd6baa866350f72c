/** Side and order of recorded points, told only where their errors allow an answer. */
import type { Finding } from '../finding.ts';
import { itemWord } from '../station/wording.ts';
import { metres, named } from './check.ts';
import type { Matched } from './placedMatch.ts';
import { type OnCourse, type PlacedGround, marginOf, recorded } from './placedGround.ts';
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
  const wrong = own
    .filter(({ item, on }) => on.side !== 'unclear' && on.side !== item.side)
    .map(({ item, on }): Finding => {
      const message = `${itemWord(item.kind)} of ${named(station)} stands on the ${on.side} as its runners see it (${(on.confidence * 100).toFixed(0)} % sure); expected the ${item.side}. Move it across, or mend the plan's side.`;
      return {
        code: 'placed-side',
        severity: 'warning',
        message,
        where: {
          ...on.point.where,
          station: station.id,
          course: direction.course,
          item: item.kind,
          measure: on.measure,
        },
      };
    });
  const unclear = own.filter(({ on }) => on.side === 'unclear');
  if (unclear.length === 0) return wrong;
  const words = [...new Set(unclear.map(({ item }) => itemWord(item.kind).toLowerCase()))].join(', ');
  const message = `The side of the road of what was recorded at ${named(station)} (${words}) cannot be told: the error of the points is too large for how far they stand from the course line. Look on the ground.`;
  return [
    ...wrong,
    {
      code: 'placed-side',
      severity: 'note',
      message,
      where: { ...unclear[0]!.on.point.where, station: station.id, course: direction.course },
      cannotTell: true,
    },
  ];
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
  const pairs = [
    ...new Set(
      wrong.map(
        ([early, late]) =>
          `${itemWord(late.item.kind).toLowerCase()} before ${itemWord(early.item.kind).toLowerCase()}`,
      ),
    ),
  ].join(', ');
  const planned = [...new Set(all.map(({ item }) => itemWord(item.kind).toLowerCase()))].join(', ');
  const [early, late] = first;
  const by = early.on.measure - late.on.measure;
  const message = `At ${named(station)} runners meet ${pairs} (by ${metres(by)}); expected ${planned}. Move them, or mend the names of the points.`;
  return [
    {
      code: 'placed-order',
      severity: 'warning',
      message,
      where: {
        ...late.on.point.where,
        station: station.id,
        course: direction.course,
        item: late.item.kind,
        measure: late.on.measure,
      },
      measured: by,
      unit: 'm',
    },
  ];
}

function swapped(early: Standing, late: Standing, lead: boolean): boolean {
  const bothTables = [early, late].every(({ item }) => isTable(item));
  if (early.item === late.item || (bothTables && !lead)) return false;
  return early.on.measure - late.on.measure > marginOf(early.on.point.r95, late.on.point.r95);
}
