/**
 * What public functions ask of what they are given, checked once at their entry: a value of another kind is refused in
 * a sentence, so that a slip in plain JavaScript never comes back as NaN or as the engine's words from inside.
 */

/** What a value is, in words that fit into a sentence: texts quoted and cut at 40 characters. */
export function describeValue(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'an empty text' : `“${cutAt40(value)}”`;
  if (typeof value === 'number') {
    if (Number.isNaN(value)) return 'something that is not a number';
    return Number.isFinite(value) ? String(value) : 'a number too large to hold';
  }
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (value === null || typeof value === 'boolean') return String(value);
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

export const cutAt40 = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** What is wrong inside a value: where (`stations[0].at`, empty for the value itself), what should be there, and what is. */
export interface Wrong {
  readonly path: string;
  readonly expected: string;
  readonly found: unknown;
  /** It is of the right type and still cannot be used. */
  readonly range?: boolean;
}

/** Tells what is wrong with a value, `null` where it is as it should be. */
export type Shape = (value: unknown) => Wrong | null;

/** The shape of each key that a record may have. */
export type Shapes<T> = { readonly [K in keyof T]-?: Shape };

const wrong = (expected: string, found: unknown, range: boolean = false): Wrong => ({
  path: '',
  expected,
  found,
  range,
});

/** The value as a sentence names it: a text or a number as it stands, records as what they are. */
const shown = (found: unknown): string =>
  typeof found === 'number' || typeof found === 'bigint' ? String(found) : describeValue(found);

/** Throws a TypeError, or a RangeError where the type is right: "passesOf wants `at` as [longitude, latitude] in degrees; found “x”". */
export function refuse(who: string, what: string, { path, expected, found, range = false }: Wrong): never {
  const [dot, as] = [path === '' || path.startsWith('[') ? '' : '.', expected === '' ? '' : ` as ${expected}`];
  const message = `${who} wants ${what}${dot}${path}${as}; found ${shown(found)}`;
  throw range ? new RangeError(message) : new TypeError(message);
}

/** Refuses a value that is not of the shape; `what`: the argument's name. */
export function want(who: string, what: string, shape: Shape, value: unknown): void {
  const found = shape(value);
  if (found !== null) refuse(who, what, found);
}

/** Any number, also NaN and infinite ones. */
export const aNumber: Shape = (value) => (typeof value === 'number' ? null : wrong('a number', value));

/** A number that counts or measures. */
export const finite: Shape = (value) =>
  typeof value === 'number' && Number.isFinite(value) ? null : wrong('a number', value, typeof value === 'number');

export const notNegative: Shape = (value) =>
  typeof value === 'number' && value >= 0 && value < Infinity
    ? null
    : wrong('a number of 0 or more', value, typeof value === 'number');

export const positive: Shape = (value) =>
  typeof value === 'number' && value > 0 && value < Infinity
    ? null
    : wrong('a number over 0', value, typeof value === 'number');

export const count: Shape = (value) =>
  Number.isSafeInteger(value) && (value as number) >= 0
    ? null
    : wrong('a whole number of 0 or more', value, typeof value === 'number');

/** A whole number from 0 to so many. */
export const upTo =
  (most: number): Shape =>
  (value) =>
    Number.isInteger(value) && (value as number) >= 0 && (value as number) <= most
      ? null
      : wrong(`a whole number from 0 to ${most}`, value, typeof value === 'number');

export const aText: Shape = (value) => (typeof value === 'string' ? null : wrong('a text', value));

/** A calendar date, ISO 8601. */
export const aDate: Shape = (value) =>
  typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/u.test(value) && !Number.isNaN(Date.parse(`${value}T00:00:00Z`))
    ? null
    : wrong('a date such as 2027-09-12', value, typeof value === 'string');

export const aFlag: Shape = (value) => (typeof value === 'boolean' ? null : wrong('true or false', value));

export const aFunction: Shape = (value) => (typeof value === 'function' ? null : wrong('a function', value));

export const anything: Shape = () => null;

/** Degrees, longitude first; longitudes may run on beyond ±180, as those of a course do. */
export const position: Shape = (value) => {
  if (!Array.isArray(value) || value.length < 2) return wrong('[longitude, latitude] in degrees', value);
  const [lon, lat] = value as unknown[];
  if (typeof lon === 'number' && typeof lat === 'number' && Math.abs(lon) <= 360 && Math.abs(lat) <= 90) return null;
  const numbers = typeof lon === 'number' && typeof lat === 'number';
  return {
    path: '',
    expected: '[longitude, latitude] in degrees, longitude first and latitude from -90 to 90',
    found: `[${shown(lon)}, ${shown(lat)}]`,
    range: numbers,
  };
};

export const column: Shape = (value) => (value instanceof Float64Array ? null : wrong('a Float64Array', value));

/** One of a few texts. */
export const oneOf =
  (...choices: readonly unknown[]): Shape =>
  (value) =>
    choices.includes(value)
      ? null
      : wrong(
          choices.map((choice) => (typeof choice === 'string' ? `'${choice}'` : String(choice))).join(', '),
          value,
          typeof value === 'string',
        );

/** Absent, or of the shape. */
export const maybe =
  (shape: Shape): Shape =>
  (value) =>
    value === undefined ? null : shape(value);

export const orNull =
  (shape: Shape): Shape =>
  (value) =>
    value === null ? null : shape(value);

/** The first shape, or the second, whose complaint is made where neither fits. */
export const either =
  (first: Shape, second: Shape): Shape =>
  (value) =>
    first(value) === null ? null : second(value);

const inside = (key: string, found: Wrong): Wrong => {
  const dot = found.path === '' || found.path.startsWith('[') ? '' : '.';
  return { ...found, path: `${key}${dot}${found.path}` };
};

/** A list, each of whose entries is of the shape; at least `least` of them. */
export const listOf =
  (shape: Shape, least: number = 0): Shape =>
  (value) => {
    if (!Array.isArray(value)) return wrong('a list', value);
    if (value.length < least) return wrong(`a list of ${least} or more`, value, true);
    for (let k = 0; k < value.length; k++) {
      const found = shape(value[k]);
      if (found !== null) return inside(`[${k}]`, found);
    }
    return null;
  };

/** A list with an entry for each shape. */
export const tuple =
  (...shapes: readonly Shape[]): Shape =>
  (value) => {
    if (!Array.isArray(value) || value.length !== shapes.length) return wrong(`a list of ${shapes.length}`, value);
    for (const [k, shape] of shapes.entries()) {
      const found = shape(value[k]);
      if (found !== null) return inside(`[${k}]`, found);
    }
    return null;
  };

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !ArrayBuffer.isView(value);

/** Any keys, each of the shape. */
export const tableOf =
  (shape: Shape): Shape =>
  (value) => {
    if (!isRecord(value)) return wrong('a record', value);
    for (const key of Object.keys(value)) {
      const found = shape(value[key]);
      if (found !== null) return inside(key, found);
    }
    return null;
  };

/** A record with the keys of `shapes`; other keys are let be. `what` says what it is: "the course that buildCourse gives". */
export function recordOf<T>(what: string, shapes: Shapes<T>): Shape {
  const keys = Object.keys(shapes) as (keyof T & string)[];
  return (value) => {
    if (!isRecord(value)) return wrong(what, value);
    for (const key of keys) {
      const found = shapes[key](value[key]);
      if (found !== null) return inside(key, found);
    }
    return null;
  };
}

/** Asks of each record once: they are not changed by anybody, as their types say. */
export function remembered(shape: Shape): Shape {
  const known = new WeakSet();
  return (value) => {
    if (typeof value === 'object' && value !== null && known.has(value)) return null;
    const found = shape(value);
    if (found === null && isRecord(value)) known.add(value);
    return found;
  };
}

/** A Map, each of whose values is of the shape. */
export const mapOf =
  (shape: Shape): Shape =>
  (value) => {
    if (!(value instanceof Map)) return wrong('a Map', value);
    for (const [key, one] of value as ReadonlyMap<unknown, unknown>) {
      const found = shape(one);
      if (found !== null) return inside(`get('${String(key)}')`, found);
    }
    return null;
  };

/** All keys of a record optional. */
export const partly = <T>(what: string, shapes: Shapes<T>): Shape =>
  recordOf(
    what,
    Object.fromEntries(Object.entries<Shape>(shapes).map(([key, shape]) => [key, maybe(shape)])) as Shapes<T>,
  );

/** Options over their defaults: a key that is absent, or undefined, is the default's. */
export function over<T extends object>(defaults: T, given: Partial<T> | undefined): T {
  if (given === undefined) return defaults;
  const merged = { ...defaults };
  for (const key of Object.keys(defaults) as (keyof T)[]) if (given[key] !== undefined) merged[key] = given[key];
  return merged;
}
