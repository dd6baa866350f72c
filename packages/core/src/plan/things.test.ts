/** Every value of a plan has a name of its own in both languages, and no sentence on one names it by its key. */
import { expect, it } from 'vitest';
import * as z from 'zod';
import { planThings as english } from '../text/en/planThings.ts';
import { planThings as spanish } from '../text/es/planThings.ts';
import { humanised, thingName } from '../text/planThing.ts';
import { thingOf, type Path } from './fault.ts';
import { planSchema } from './schema.ts';

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly anyOf?: readonly Schema[];
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly additionalProperties?: Schema | boolean;
}

/** Every place that a plan's values can stand at, by the first entry of each list. */
function placesIn(schema: Schema, path: Path): Path[] {
  const inside = (one: Schema | boolean | undefined, key: string | number): Path[] =>
    typeof one === 'object' ? placesIn(one, [...path, key]) : [];
  // The numbers of a coordinate pair are read together: a fault is about the pair.
  const isPair = schema.prefixItems !== undefined && /^(?:at|line|polygon)$/u.test(String(path.findLast(isKey)));
  return [
    path,
    ...Object.entries(schema.properties ?? {}).flatMap(([key, one]) => inside(one, key)),
    ...(schema.anyOf ?? []).flatMap((one) => placesIn(one, path).slice(1)),
    ...inside(schema.items, 0),
    ...(isPair ? [] : (schema.prefixItems ?? []).flatMap((one) => inside(one, 0))),
    ...inside(schema.additionalProperties, 's1'),
  ];
}
const isKey = (part: string | number): boolean => typeof part === 'string';

const places = placesIn(z.toJSONSchema(planSchema, { io: 'input', reused: 'inline' }) as Schema, []).filter(
  // A variant holds any keys: they are checked laid over their station.
  (path) => path[0] !== 'variants' || path.length < 5,
);

it('names every value of the schema, in both languages, with nothing left over in the tables', () => {
  expect(places.length).toBeGreaterThan(300);
  const keys = new Set(places.map((path) => thingOf(path).keys));
  expect(Object.keys(english).sort()).toEqual([...keys].sort());
  expect(Object.keys(spanish).sort()).toEqual([...keys].sort());
});

it('names values by words, never by their keys, and fills in their numbers', () => {
  for (const path of places) {
    const thing = thingOf(path);
    for (const names of [english, spanish]) {
      const name = thingName(thing, names, '');
      expect(name).toMatch(/^[\p{L}’]/u);
      expect(name).not.toMatch(/[a-z][A-Z]|[[\]{}]|no\. ?$|n\.º ?$/u);
    }
  }
  expect(thingName(thingOf(['races', 1, 'waves', 2, 'time']), english, '')).toBe('start time of wave no. 3');
  expect(thingName(thingOf(['races', 1, 'waves', 2, 'time']), spanish, '')).toBe('la hora de la salida n.º 3');
});

it('calls a rule of a station, a value of a variant and the finish times of a wave as what they stand for', () => {
  for (const path of [
    ['practice', 'signAhead'],
    ['stations', 3, 'practice', 'signAhead'],
    ['variants', 0, 'stations', 's1', 'practice', 'signAhead'],
  ])
    expect(thingName(thingOf(path), english, '')).toBe('sign distance');
  expect(thingOf(['races', 0, 'waves', 1, 'finish', 'median'])).toEqual(thingOf(['races', 0, 'finish', 'median']));
  expect(thingName(thingOf(['variants', 1, 'stations', 's9']), english, '')).toBe('station that variant no. 2 changes');
});

it('takes the words out of a key that no table knows', () => {
  const thing = thingOf(['practice', 'coneEvery']);
  expect(thingName(thing, english, humanised(thing.keys))).toBe('cone every');
});
