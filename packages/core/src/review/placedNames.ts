/**
 * What the name of a recorded point says: which station, which item, which end of it.
 * Case and punctuation do not count, nor whether letters and digits are written together.
 */
import type { StationLayout } from '../layout/layout.ts';
import type { ItemKind } from '../plan/plan.ts';

/** What a name says; nothing is guessed here. */
export interface PlacedName {
  /** Named by id, name, or "station 3"; several where the name fits several equally. */
  readonly stations: readonly StationLayout[];
  /** Named only by a number somewhere in the name, which may mean something else. */
  readonly perhaps: StationLayout | null;
  /** Items that the name allows; `pin`: the upstream end of the first drink table; `any`: it says none; `none`: it says something else. */
  readonly kinds: readonly ItemKind[] | 'pin' | 'any' | 'none';
  readonly end: 'from' | 'to' | null;
}

const words = (text: string): ReadonlySet<string> => new Set(text.split(' '));
const SIGN = words('sign signs signpost ahead advance');
const TRASH = words('trash rubbish litter garbage refuse waste bin bins box boxes');
const GEL = words('gel gels');
const WATER = words('water');
const SPORTS_DRINK = words('sportsdrink sportsdrinks sportdrink electrolyte electrolytes isotonic');
const SPORT = words('sport sports');
const DRINK = words('drink drinks');
const TABLE = words('table tables');
const PIN = words('pin chalk mark');
const FROM = words('from start begin beginning first upstream');
const TO = words('to end last downstream');
const OTHER = words(
  'medical medic toilet toilets radio access drop marshal parking tent timing km kilometre mile finish',
);
const NUMBERED = words('station stations stn stop aid no nr number');
const FILLERS = words('the of at a and');

const DRINKS: readonly ItemKind[] = ['sportsDrink', 'water'];
const TABLES: readonly ItemKind[] = ['gel', 'sportsDrink', 'water'];

/** Words and numbers of a text, in lower case, without accents, punctuation and leading zeros. */
export function tokensOf(text: string): string[] {
  const plain = text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();
  return (plain.match(/\p{L}+|\p{N}+/gu) ?? []).map((token) => token.replace(/^0+(?=\p{N})/u, ''));
}

/** Reads the name of a point (`null`: it has none) against the stations of a layout. */
export function readName(name: string | null, stations: readonly StationLayout[]): PlacedName {
  const tokens = tokensOf(name ?? '');
  const { found, rest } = stationIn(tokens, stations);
  const numbers = rest.filter((token) => /^\p{N}+$/u.test(token));
  const kinds = kindsIn(rest, found.length > 0);
  const loose =
    found.length === 0 && numbers.length === 1 && Array.isArray(kinds)
      ? (stations[Number(numbers[0]) - 1] ?? null)
      : null;
  const from = rest.some((token) => FROM.has(token));
  const to = rest.some((token) => TO.has(token));
  return { stations: found, perhaps: loose, kinds, end: from === to ? null : from ? 'from' : 'to' };
}

interface Mention {
  readonly station: StationLayout;
  readonly at: number;
  readonly length: number;
}

/** The stations with the longest mention, and what is left of the name without it. */
function stationIn(
  tokens: readonly string[],
  stations: readonly StationLayout[],
): { found: StationLayout[]; rest: string[] } {
  const mentions = stations.flatMap((station) =>
    [tokensOf(station.id), tokensOf(station.name)].flatMap((wanted) => mentionOf(tokens, wanted, station)),
  );
  if (mentions.length === 0) mentions.push(...numberedIn(tokens, stations));
  const longest = Math.max(0, ...mentions.map(({ length }) => length));
  const best = mentions.filter(({ length }) => length === longest);
  const first = best[0];
  const rest =
    first === undefined ? [...tokens] : tokens.filter((_, k) => k < first.at || k >= first.at + first.length);
  return { found: [...new Set(best.map(({ station }) => station))], rest };
}

function mentionOf(tokens: readonly string[], wanted: readonly string[], station: StationLayout): Mention[] {
  if (wanted.length === 0) return [];
  const at = tokens.findIndex((_, k) => wanted.every((token, j) => tokens[k + j] === token));
  return at === -1 ? [] : [{ station, at, length: wanted.length }];
}

/** "station 3", "no. 3": the third of the plan. */
function numberedIn(tokens: readonly string[], stations: readonly StationLayout[]): Mention[] {
  return tokens.flatMap((token, k): Mention[] => {
    const station =
      /^\p{N}+$/u.test(token) && NUMBERED.has(tokens[k - 1] ?? '') ? stations[Number(token) - 1] : undefined;
    return station === undefined ? [] : [{ station, at: k - 1, length: 2 }];
  });
}

function kindsIn(rest: readonly string[], hasStation: boolean): PlacedName['kinds'] {
  const says = (set: ReadonlySet<string>): boolean => rest.some((token) => set.has(token));
  // "Water and gel ahead" is the text on the sign, and "water boxes" are trash: what stands where comes before what it is for.
  const around: ItemKind[] = [...(says(SIGN) ? ['sign' as const] : []), ...(says(TRASH) ? ['trash' as const] : [])];
  if (around.length > 0) return around;
  const tables = tablesIn(rest, says);
  if (tables.length > 0) return tables;
  if (says(PIN)) return 'pin';
  if (says(TABLE)) return TABLES;
  if (says(OTHER)) return 'none';
  const left = rest.filter((token) => !FILLERS.has(token) && !NUMBERED.has(token));
  return hasStation && left.length === 0 ? 'pin' : 'any';
}

function tablesIn(rest: readonly string[], says: (set: ReadonlySet<string>) => boolean): readonly ItemKind[] {
  const drink = rest.findIndex((token) => DRINK.has(token));
  const sports = says(SPORTS_DRINK) || (drink > 0 && SPORT.has(rest[drink - 1]!));
  const named: ItemKind[] = [
    ...(says(GEL) ? ['gel' as const] : []),
    ...(sports ? ['sportsDrink' as const] : []),
    ...(says(WATER) ? ['water' as const] : []),
  ];
  return named.length === 0 && drink !== -1 ? DRINKS : named;
}
