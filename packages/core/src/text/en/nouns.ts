/** Things as they stand in a sentence. */
import type { ItemKind, PointKind } from '../../kinds.ts';
import type { PassAt, PointRef } from '../params/review.ts';
import type { Say } from '../say.ts';

export const THE: { readonly [kind in ItemKind]: string } = {
  sign: 'the sign',
  gel: 'the gel',
  sportsDrink: 'the sports drink',
  water: 'the water',
  handOut: 'the hand-out line',
  trash: 'the trash',
};

/** Things that stand at the road, tables as tables: "the water tables". */
export const STANDING: { readonly [kind in ItemKind]: string } = {
  ...THE,
  gel: 'the gel tables',
  sportsDrink: 'the sports drink tables',
  water: 'the water tables',
};

/** Whether a sentence takes things that stand at the road as many. */
export const areMany = (kinds: readonly ItemKind[]): boolean =>
  kinds.length > 1 || kinds.some((kind) => STANDING[kind] !== THE[kind]);

export const A_POINT: { readonly [kind in PointKind]: string } = {
  drop: 'a supplies drop',
  access: 'an access point',
  medical: 'a first-aid point',
  toilets: 'a toilets point',
  radio: 'a radio point',
  other: 'a point',
};

export const begin = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** As a sentence begins with it. */
export const theItem = (kind: ItemKind): string => begin(THE[kind]);

/** By its own name, else by what it is. */
export const aPoint = ({ kind, name }: PointRef, say: Say): string => (name === null ? A_POINT[kind] : say.quote(name));

/** "Full at 41.39 km". */
export const passAt = ({ race, measure }: PassAt, say: Say): string => `${say.race(race)} at ${say.far(measure)}`;

/** How sure a side is: "66 % sure". */
export const sure = (confidence: number, say: Say): string => `${say.percent(Math.round(confidence * 100) / 100)} sure`;

/** "1st", "2nd", "3rd", "4th". */
export function nth(count: number): string {
  const teen = count % 100 >= 11 && count % 100 <= 13;
  return `${count}${(teen ? undefined : { 1: 'st', 2: 'nd', 3: 'rd' }[count % 10]) ?? 'th'}`;
}

/** "once", "3 times". */
export const often = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);
