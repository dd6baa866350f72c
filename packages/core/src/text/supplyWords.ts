/** What supplies are called, as a language fills it in, and a supply in its words. */
import type { Supply, SupplyKind } from '../kinds.ts';

export interface SupplyWords {
  /** As they stand inside a sentence. */
  readonly kinds: { readonly [kind in SupplyKind]: readonly [one: string, more: string] };
  readonly signOf: (wording: string) => string;
  readonly emptyOne: (what: string) => string;
  readonly emptyMore: (what: string) => string;
}

/** One of a supply: "jug of water", "sign “Water ahead”". */
export function supplyText({ kind, wording, empty }: Supply, words: SupplyWords): string {
  const what = wording === undefined ? words.kinds[kind][0] : words.signOf(wording);
  return empty === true ? words.emptyOne(what) : what;
}

/** Several of a supply, as a line of a list begins: "Jugs of water, empty", "Sign “Water ahead”". */
export function suppliesText({ kind, wording, empty }: Supply, words: SupplyWords): string {
  const what = wording === undefined ? words.kinds[kind][1] : words.signOf(wording);
  const text = empty === true ? words.emptyMore(what) : what;
  return text.charAt(0).toUpperCase() + text.slice(1);
}
