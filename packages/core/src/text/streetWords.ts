/** A place by its street in words, as a language says it. */
/** A place: its street, and the cross-streets before and after it; `null` where there is none that is known. */
export interface NamedPlace {
  readonly street: string | null;
  readonly after: string | null;
  readonly before: string | null;
}

/** What meets a course at a junction: its names, whether it carries vehicles, whether it leads to premises only. */
export interface NamedCrossing {
  readonly names: readonly string[];
  readonly vehicles: boolean;
  readonly access: boolean;
}

export interface StreetWords {
  /** "Harbour Road, between Mill Lane and Quay Street". */
  readonly between: (street: string, after: string, before: string) => string;
  /** Where one and the same street comes before and after. */
  readonly by: (street: string, other: string) => string;
  readonly past: (street: string, after: string) => string;
  readonly before: (street: string, before: string) => string;
  /** "from the map of 2026-10-02"; `null`: the map tells no day. */
  readonly fromMap: (day: string | null) => string;
  /** Under a map: whom it credits, by which licence, of which day it is. */
  readonly credit: (credit: string, licence: string | null, day: string | null) => string;
  /** On the other side of the road. */
  readonly across: string;
  /** A street, a path, or a way to premises, that has no name. */
  readonly unnamed: { readonly street: string; readonly path: string; readonly drive: string };
}

/** `null` where the street is not known. */
export function placeInWords({ street, after, before }: NamedPlace, words: StreetWords): string | null {
  if (street === null) return null;
  if (after === null) return before === null ? street : words.before(street, before);
  if (before === null) return words.past(street, after);
  return after === before ? words.by(street, after) : words.between(street, after, before);
}

/** Names of what meets a course at a junction, or what it is. */
export function crossingInWords({ names, vehicles, access }: NamedCrossing, { unnamed }: StreetWords): string {
  if (names.length > 0) return names.join(', ');
  return access ? unnamed.drive : vehicles ? unnamed.street : unnamed.path;
}
