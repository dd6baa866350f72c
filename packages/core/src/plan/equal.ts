/**
 * Whether two parts of plans say the same: objects read anew from a text are others, but equal. The order of keys counts,
 * so that whatever is made of equal parts is equal too.
 */

/** Deep equality of plain data: numbers, texts, booleans, `undefined`, lists and records; the very same object is not looked into. */
export function equal(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one))
    return Array.isArray(other) && one.length === other.length && one.every((value, k) => equal(value, other[k]));
  if (Array.isArray(other)) return false;
  const entries = Object.entries(one);
  const others = Object.entries(other);
  return (
    entries.length === others.length &&
    entries.every(([key, value], k) => key === others[k]![0] && equal(value, others[k]![1]))
  );
}
