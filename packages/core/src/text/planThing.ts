/** The name of a value of a plan, from a language's table of names by keys. */
import type { Thing } from './params/plan.ts';

/** By keys, e.g. `races[].waves[].time`: "start time of wave {2}", where {2} is the second number of the thing. */
export type ThingNames = Readonly<Record<string, string>>;

/** The keys that a plan's last one is made of, as words: `signAhead` is "sign ahead". */
export const humanised = (keys: string): string =>
  (/[A-Za-z]+(?=[^A-Za-z]*$)/u.exec(keys)?.[0] ?? '').replaceAll(/[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`);

/** The name in the table with its numbers; `otherwise` where the table has none. */
export function thingName({ keys, numbers }: Thing, names: ThingNames, otherwise: string): string {
  const name = Object.hasOwn(names, keys) ? names[keys]! : otherwise;
  return name.replaceAll(/\{(\d)\}/gu, (_, place: string) => String(numbers[Number(place) - 1] ?? ''));
}

/** The name as a label of its own: without article, its first letter large. */
export function thingLabel(keys: string, names: ThingNames): string {
  const name = thingName({ keys, numbers: [] }, names, humanised(keys)).replace(/^(?:el|la|los|las) /u, '');
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}
