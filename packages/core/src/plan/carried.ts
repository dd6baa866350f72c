/** zod gives its issues nothing but a text to carry; what is wrong rides in it as JSON, so that no sentence is made there. */
import { refused, type Wrong } from './fault.ts';
import type { Accepted } from '../text/params/plan.ts';

/** What is wrong as the message of an issue; several, where one issue is about several keys. */
export const carried = (...wrong: readonly Wrong[]): string => JSON.stringify(wrong);

/** A value that is not what is accepted, as the message of an issue. */
export const carriedValue = (found: unknown, accepted: Accepted): string =>
  carried({ code: 'plan-value', problem: refused(found, accepted) });

/** What an issue's message carries: every issue of the plan's schema is made with one of the above. */
export const wrongIn = (message: string): readonly [Wrong, ...Wrong[]] =>
  JSON.parse(message) as readonly [Wrong, ...Wrong[]];
