/** How cups stand on tables, as people say it: so many in all, how many on each table, in how many layers. */

/** Cups of one drink that stand poured, and a full layer of one table. */
export interface PouredCups {
  readonly cups: number;
  readonly tables: number;
  readonly cupsPerLayer: number;
}

/** The same by table. */
export interface PourWords {
  /** As printed: "1,184". */
  readonly cups: string;
  readonly tables: number;
  /** On each table, rounded up, as printed. */
  readonly each: string;
  /** Full layers of each table, and cups on top of them. */
  readonly full: number;
  readonly rest: number;
}

/** `count`: how the language prints a whole number. */
export function pourWordsOf({ cups, tables, cupsPerLayer }: PouredCups, count: (value: number) => string): PourWords {
  const each = tables === 0 ? 0 : Math.ceil(cups / tables - 1e-9);
  return {
    cups: count(cups),
    tables,
    each: count(each),
    full: Math.floor(each / cupsPerLayer),
    rest: each % cupsPerLayer,
  };
}
