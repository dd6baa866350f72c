/** How often a property is tried. Not part of the package. */

/**
 * Few enough that nobody waits for them while writing; more where continuous integration has the time. `TRIES` says another
 * number, e.g. `TRIES=2000 npx vitest run --project across tests/ranges.test.ts`.
 */
const MOST = Number(process.env['TRIES'] ?? (process.env['CI'] ? 1000 : 200));

/** As many cases as are wanted, or as there is time for. `each`: how many usual cases one of them takes the time of. */
export const tries = (wanted: number, each: number = 1): number =>
  Math.min(wanted, process.env['TRIES'] === undefined ? Math.ceil(MOST / each) : MOST);
