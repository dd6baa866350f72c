/** A word that is not known, as findings have it. */
/** A word that is not known, and the known ones: the nearest, else up to twelve of them and how many more there are. */
export interface Unknown {
  readonly word: string;
  readonly near?: string;
  readonly known: readonly string[];
  readonly more: number;
}
