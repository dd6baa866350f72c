/** Remedies of signs, tables and boxes that stand wrongly, or of which there are none or too few. */
import type { ItemKind, Served } from '@halfcup/core/plan';
import { SERVED_WORD } from '../../words.ts';
import { setOfStation, type Path } from './edits.ts';
import {
  capital,
  cleared,
  clearedTogether,
  hasOwn,
  listed,
  remedy,
  THE_ITEM,
  type FoundAt,
  type Remedy,
} from './remedy.ts';

/** Lets the rules place what a hand has placed. */
function byTheRules(
  { open, station }: FoundAt<unknown>,
  items: readonly ItemKind[],
  more: readonly Path[] = [],
): readonly Remedy[] {
  const own = items.filter((kind) => hasOwn(open, station.id, ['items', kind]));
  if (own.length === 0) return [];
  const what = listed(own.map((kind) => THE_ITEM[kind]));
  const paths = [...own.map((kind): Path => ['items', kind]), ...more];
  const command = clearedTogether(open, station, paths, `place ${what} by the rules`);
  const stands = own.length === 1 && ['sign', 'gel', 'sportsDrink', 'water', 'handOut'].includes(own[0] ?? '');
  return command === null
    ? []
    : [remedy(`Place ${what} by the rules`, `${capital(what)} ${stands ? 'stands' : 'stand'} by the rules.`, command)];
}

/** Of a sign or boxes at a wrong distance: placed by hand, or by a distance of the station's own. */
function distance(
  given: FoundAt<{ readonly byHand: boolean; readonly own: number | null }>,
  item: 'sign' | 'trash',
  rules: readonly string[],
  what: string,
): readonly Remedy[] {
  const { open, station, params } = given;
  const own = rules.map((rule): Path => ['practice', rule]).filter((path) => hasOwn(open, station.id, path));
  if (params.byHand) return byTheRules(given, [item], params.own === null ? [] : own);
  const command = clearedTogether(open, station, own, `use the plan’s distance of ${THE_ITEM[item]}`);
  return command === null
    ? []
    : [
        remedy(
          `Use the plan’s ${what}`,
          `${capital(THE_ITEM[item])} ${item === 'sign' ? 'stands' : 'stand'} at the plan’s distance.`,
          command,
        ),
      ];
}

export const signDistance = (given: FoundAt<{ byHand: boolean; own: number | null }>): readonly Remedy[] =>
  distance(given, 'sign', ['signAhead'], 'sign distance');

export const boxDistance = (given: FoundAt<{ byHand: boolean; own: number | null }>): readonly Remedy[] =>
  distance(given, 'trash', ['trashFrom', 'trashTo'], 'box distances');

export const handPlaced = (given: FoundAt<{ readonly byHand: readonly ItemKind[] }>): readonly Remedy[] =>
  byTheRules(given, given.params.byHand);

export const astray = (given: FoundAt<{ readonly items: readonly ItemKind[] }>): readonly Remedy[] =>
  byTheRules(given, given.params.items);

export const signInRoad = (given: FoundAt<unknown>): readonly Remedy[] => byTheRules(given, ['sign']);

export function boxesMissing({ open, station }: FoundAt<unknown>): readonly Remedy[] {
  if (station.station.boxes !== 0) return [];
  const command = cleared(open, station.id, ['boxes'], `put up boxes by the rules, ${station.name}`);
  return command === null ? [] : [remedy('Put up boxes by the rules', 'The trash boxes stand by the rules.', command)];
}

export function boxesFew({ station, params }: FoundAt<{ readonly needed: number }>): readonly Remedy[] {
  const ways = station.directions.filter(({ items }) =>
    items.some(({ kind, boxes }) => kind === 'trash' && (boxes?.length ?? 0) > 0),
  ).length;
  if (ways === 0) return [];
  const count = Math.ceil(params.needed / ways);
  const what = `${count} ${count === 1 ? 'box' : 'boxes'}${ways === 1 ? '' : ' each way'}`;
  return [
    remedy(
      `Put up ${what}`,
      `There ${count === 1 ? 'is' : 'are'} now ${what}.`,
      setOfStation(station.id, ['boxes'], count, `put up ${what}, ${station.name}`),
    ),
  ];
}

/** Tables of what is not served, or none of what is. */
export function tablesMismatch({
  open,
  station: { id, name, station },
  params: { item, tables },
}: FoundAt<{ readonly item: Served; readonly tables: number }>): readonly Remedy[] {
  const word = SERVED_WORD[item];
  const away = cleared(open, id, ['tables', item], `${tables === 0 ? 'give' : 'remove'} tables of ${word}, ${name}`);
  const serve = (kinds: readonly Served[], what: string): Remedy['command'] =>
    setOfStation(id, ['serves'], kinds, `${what} ${word}, ${name}`);
  const others = station.serves.filter((kind) => kind !== item);
  const byRules = away === null ? [] : [away];
  if (tables === 0)
    return [
      ...byRules.map((command) =>
        remedy(`Put up tables of ${word} by the rules`, `${capital(word)} has tables by the rules.`, command),
      ),
      ...(others.length === 0
        ? []
        : [remedy(`Stop serving ${word}`, `${capital(word)} is no longer served.`, serve(others, 'stop serving'))]),
    ];
  const what = tables === 1 ? `the table of ${word}` : `the ${tables} tables of ${word}`;
  return [
    ...byRules.map((command) =>
      remedy(`Remove ${what}`, `${capital(what)} ${tables === 1 ? 'is' : 'are'} removed.`, command),
    ),
    remedy(`Serve ${word}`, `${capital(word)} is served.`, serve([...station.serves, item], 'serve')),
  ];
}
