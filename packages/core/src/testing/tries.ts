/** How often a property is tried. Not part of the package. */

/** Few enough that nobody waits for them while writing; more where continuous integration has the time. */
const MOST = process.env['CI'] ? 1000 : 200;

/** As many cases as are wanted, or as there is time for. */
export const tries = (wanted: number): number => Math.min(wanted, MOST);
