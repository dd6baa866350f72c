/** Things as they stand in a sentence. */
import type { ItemKind, PointKind } from '../../kinds.ts';
import type { PassAt, PointRef } from '../params/review.ts';
import type { Say } from '../say.ts';

export const THE: { readonly [kind in ItemKind]: string } = {
  sign: 'el cartel',
  gel: 'el gel',
  sportsDrink: 'la bebida isotónica',
  water: 'el agua',
  handOut: 'la línea de entrega',
  trash: 'la basura',
};

/** Lo que está junto a la vía; las mesas, como mesas: "las mesas de agua". */
export const STANDING: { readonly [kind in ItemKind]: string } = {
  ...THE,
  gel: 'las mesas de gel',
  sportsDrink: 'las mesas de bebida isotónica',
  water: 'las mesas de agua',
};

/** Si una frase lo toma en plural. */
export const areMany = (kinds: readonly ItemKind[]): boolean =>
  kinds.length > 1 || kinds.some((kind) => STANDING[kind] !== THE[kind]);

export const A_POINT: { readonly [kind in PointKind]: string } = {
  drop: 'un punto de entrega de material',
  access: 'un punto de acceso',
  medical: 'un punto médico',
  toilets: 'un punto de aseos',
  radio: 'un punto de radio',
  other: 'un punto',
};

export const begin = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** As a sentence begins with it. */
export const theItem = (kind: ItemKind): string => begin(THE[kind]);

/** "del cartel", "de la basura". */
export const ofThe = (kind: ItemKind): string => `de ${THE[kind]}`.replace(/^de el /u, 'del ');

/** By its own name, else by what it is. */
export const aPoint = ({ kind, name }: PointRef, say: Say): string => (name === null ? A_POINT[kind] : say.quote(name));

/** "Maratón en 41.39 km". */
export const passAt = ({ race, measure }: PassAt, say: Say): string => `${say.race(race)} en ${say.far(measure)}`;

/** How sure a side is: "seguro al 66 %". */
export const sure = (confidence: number, say: Say): string =>
  `seguro al ${say.percent(Math.round(confidence * 100) / 100)}`;

/** "2.ª". */
export const nth = (count: number): string => `${count}.ª`;

/** "una vez", "3 veces". */
export const often = (count: number): string => (count === 1 ? 'una vez' : `${count} veces`);
