/** Several items of a station with one and the same trouble: one finding that names them. */
import type { ItemKind } from '../kinds.ts';

interface OfItem {
  readonly params: { readonly item: ItemKind };
  readonly severity?: string;
}

/** Kinds of items, each once. */
export const kindsOf = (items: readonly { readonly kind: ItemKind }[]): ItemKind[] => [
  ...new Set(items.map(({ kind }) => kind)),
];

/** One case of those that have one cause, `worst` first: with the items of all that are as grave. None of none. */
export function asOne<C extends OfItem>(
  cases: readonly C[],
  worst: (a: C, b: C) => number,
): (C & { readonly params: C['params'] & { readonly items: readonly ItemKind[] } })[] {
  const [first] = cases.toSorted(worst);
  if (first === undefined) return [];
  const items = kindsOf(
    cases.filter(({ severity }) => severity === first.severity).map(({ params }) => ({ kind: params.item })),
  );
  return [{ ...first, params: { ...first.params, items } }];
}
