/** The sentence that every refusal of a value has. */
import { describeValue } from '../units.ts';

/** "found …; accepted: …", or "missing; accepted: …" where there is no value. */
export const told = (input: unknown, accepted: string): string =>
  input === undefined ? `missing; accepted: ${accepted}` : `found ${describeValue(input)}; accepted: ${accepted}`;
