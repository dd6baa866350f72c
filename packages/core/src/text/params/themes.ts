/** What checks are about. */

/** What a check is about: the drawn line, times and closures, runners' ways, … */
export type Theme = 'line' | 'time' | 'flows' | 'items' | 'ground' | 'spacing' | 'supplies' | 'as-built' | 'left-out';
