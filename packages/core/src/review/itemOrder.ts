/** Gel, sports drink, water and boxes in another order than the practice wants, as where a hand has placed one. Items on top of one another have a finding of their own. */
import type { Item, Layout, StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import type { ItemKind } from '../plan/plan.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { isOnTop } from './itemsOnTop.ts';

const ORDER: readonly ItemKind[] = ['gel', 'sportsDrink', 'water', 'trash'];
/** Rounding, metres. */
const SAME = 1e-6;

export const itemOrder: Check = check(
  {
    code: 'item-order',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) => layout.stations.flatMap((station) => disorder(station, layout)),
);

function disorder(station: StationLayout, layout: Layout): Case<'item-order'>[] {
  const lead = leadOf(station);
  if (lead === undefined) return [];
  const items = lead.items.filter(
    (item) => ORDER.includes(item.kind) && item.boxes?.length !== 0 && strayedBy(item, lead, station, layout) === null,
  );
  const wanted = items.toSorted((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
  const wrong = wanted.flatMap((before, k) => wanted.slice(k + 1).flatMap((after) => pairOf(before, after)));
  const [first] = wrong;
  if (first === undefined) return [];
  const byHand = wanted.filter((item) => item.byHand === true).map(({ kind }) => kind);
  const moved = byHand.find((kind) => wrong.some((pair) => pair.some((item) => item.kind === kind)));
  const subject = items.find(({ kind }) => kind === moved) ?? first[0];
  const where = {
    ...atStation(station, moved === undefined ? '' : `items/${moved}`),
    course: lead.course,
    item: subject.kind,
    measure: subject.from,
  };
  const met = wanted.toSorted((a, b) => a.from - b.from).map(({ kind }) => kind);
  return [
    {
      params: { met, wanted: wanted.map(({ kind }) => kind), byHand },
      where: subject.at[0] === null ? where : { ...where, at: subject.at[0] },
    },
  ];
}

/** The two where runners meet the second before the first; boxes before the end of any table. */
function pairOf(before: Item, after: Item): [Item, Item][] {
  if (isOnTop(before, after)) return [];
  const late = after.kind === 'trash' ? after.from < before.to - SAME : after.to <= before.from + SAME;
  return late ? [[before, after]] : [];
}
