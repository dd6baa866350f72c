/** Plans with parts taken out, put elsewhere, doubled, nested or made something else. Not part of the package. */
import { ODD_TEXTS, type Random, pick, tornText } from './random.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Container = Json[] | { [key: string]: Json };

const isContainer = (value: Json): value is Container => typeof value === 'object' && value !== null;

/** Every container in a value, itself the first. */
function containersIn(value: Json): Container[] {
  if (!isContainer(value)) return [];
  return [value, ...Object.values(value).flatMap(containersIn)];
}

const VALUES: readonly Json[] = [
  null,
  true,
  0,
  -1,
  0.5,
  1e7,
  -1e300,
  [],
  {},
  [[]],
  ['water'],
  [-17.4, -33.2],
  [180, 90],
  [null],
  { id: 'x' },
  'left',
  'all',
  'c',
  'r',
  's1',
  '5 km',
  '-5 km',
  '3 l',
  '08:00',
  '2027-02-30',
  ...ODD_TEXTS,
];

const KEYS = [
  'id',
  'name',
  'at',
  'on',
  'gpx',
  'line',
  'parts',
  'races',
  'passes',
  'serves',
  'tables',
  'waves',
  'finish',
  'practice',
  'supplies',
  'variants',
  'items',
  'extra',
  '__proto__',
  'constructor',
  '',
];

function put(into: Container, key: string, value: Json): void {
  if (Array.isArray(into)) into.splice(Number(key), 1, value);
  else Object.defineProperty(into, key, { value, enumerable: true, configurable: true, writable: true });
}

/** One thing done to a value in place. */
function change(plan: Json, random: Random): void {
  const containers = containersIn(plan);
  const into = pick(random, containers);
  const keys = Object.keys(into);
  const key =
    keys.length === 0 || random(8) === 0 ? (Array.isArray(into) ? '0' : pick(random, KEYS)) : pick(random, keys);
  const kind = random(7);
  const other = (): Json => structuredClone(pick(random, containers)) as Json;
  if (kind === 0) {
    if (Array.isArray(into)) into.splice(Number(key), 1);
    else delete into[key];
  } else if (kind === 1) put(into, key, other());
  else if (kind === 2 && Array.isArray(into)) into.push(...structuredClone(into.slice(0, 1 + random(3))));
  else if (kind === 3) {
    let nest: Json = (into as { [key: string]: Json })[key] ?? null;
    for (let k = random(4); k >= 0; k--) nest = random(2) === 0 ? [nest] : { [pick(random, KEYS)]: nest };
    put(into, key, nest);
  } else put(into, key, structuredClone(pick(random, VALUES)));
}

/** The text of a plan with one to four things done to it. */
export function oddPlan(base: unknown, random: Random): string {
  const plan = structuredClone(base) as Json;
  for (let times = 1 + random(4); times > 0; times--) change(plan, random);
  const text = JSON.stringify(plan, null, random(2));
  return random(8) === 0 ? tornText(text, random) : text;
}
