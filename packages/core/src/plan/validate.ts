/**
 * A plan's JSON value against the schema, with every fault: single values, references between its
 * parts, and each variant laid over the stations it changes.
 */
import { consistencyFaults } from './consistency.ts';
import type { Fault } from './fault.ts';
import { parseWith } from './messages.ts';
import { migrate } from './migrate.ts';
import type { Unknown } from '../text/params/unknown.ts';
import { unknownWord } from './nearest.ts';
import type { Plan } from './plan.ts';
import { referenceFaults } from './references.ts';
import { planSchema } from './schema.ts';
import { stationSchema } from './schemaStation.ts';

type Entry = { readonly [key: string]: unknown };
export type Validated =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const isEntry = (value: unknown): value is Entry =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const keyOf = (fault: Fault): string => JSON.stringify([fault.path, fault.code, fault.problem]);

/** The faults that are not among the known ones. */
function unknownOf(faults: readonly Fault[], known: readonly Fault[]): readonly Fault[] {
  const keys = new Set(known.map(keyOf));
  return faults.filter((fault) => !keys.has(keyOf(fault)));
}

/** Checks a value of the current version, without laying its variants over. */
export function validateBare(value: Entry): Validated {
  const parsed = parseWith(planSchema, value);
  if (parsed.ok) return { ok: true, plan: parsed.value };
  return { ok: false, faults: [...parsed.faults, ...unknownOf(referenceFaults(value), parsed.faults)] };
}

/** A station with a variant's keys laid over; `at` replaces `on` and the reverse. */
function overlaid(station: Entry, patch: Entry): Entry {
  const dropped =
    patch['at'] !== undefined && patch['on'] === undefined
      ? 'on'
      : patch['on'] !== undefined && patch['at'] === undefined
        ? 'at'
        : '';
  return { ...Object.fromEntries(Object.entries(station).filter(([key]) => key !== dropped)), ...patch };
}

/** A plan's value with one variant (by its index) laid over its stations. */
export function layVariant(plan: Entry, index: number): Entry {
  const variants = plan['variants'];
  const variant: unknown = Array.isArray(variants) ? variants[index] : undefined;
  const patches = isEntry(variant) && isEntry(variant['stations']) ? variant['stations'] : {};
  const stations = Array.isArray(plan['stations']) ? plan['stations'] : [];
  return {
    ...plan,
    stations: stations.map((station: unknown) => {
      const id = isEntry(station) ? station['id'] : undefined;
      const patch = typeof id === 'string' && Object.hasOwn(patches, id) ? patches[id] : undefined;
      return isEntry(station) && isEntry(patch) ? overlaid(station, patch) : station;
    }),
  };
}

/** Where a fault of a plan with its variant laid over stands in the file: at the variant's own key if it has it. */
function inVariant(fault: Fault, laid: Entry, index: number): Fault {
  const [list, station, ...rest] = fault.path;
  const stations = laid['stations'];
  const entry: unknown = list === 'stations' && Array.isArray(stations) ? stations[station as number] : undefined;
  return isEntry(entry) ? { ...fault, path: ['variants', index, 'stations', String(entry['id']), ...rest] } : fault;
}

/**
 * Whether a plan without a fault has none with a variant laid over: for that the stations that it changes are enough, and
 * what they and the plan say of each other.
 */
function laidWell(plan: Plan, laid: Entry, patches: Entry): boolean {
  const stations = (laid['stations'] as readonly Entry[]).filter(({ id }) => Object.hasOwn(patches, String(id)));
  const drafts = stations.map((station) => parseWith(stationSchema, station));
  const read = drafts.flatMap((draft) => (draft.ok ? [draft.value] : []));
  return (
    Object.keys(patches).length === read.length &&
    referenceFaults({ courses: laid['courses'], races: laid['races'], stations }).length === 0 &&
    consistencyFaults({ ...plan, courses: [], stations: read }).length === 0
  );
}

/** Faults that one variant brings to a plan, beside those that it has without it. */
function variantFaults(plan: Entry, variant: unknown, index: number, bare: Validated): readonly Fault[] {
  const patches = isEntry(variant) && isEntry(variant['stations']) ? variant['stations'] : {};
  const renamed = Object.entries(patches)
    .filter(([, patch]) => isEntry(patch) && Object.hasOwn(patch, 'id'))
    .map(([id]): Fault => ({
      code: 'plan-key',
      path: ['variants', index, 'stations', id, 'id'],
      problem: { problem: 'fixedId' },
    }));
  if (renamed.length > 0) return renamed;
  const laid = layVariant(plan, index);
  if (bare.ok && laidWell(bare.plan, laid, patches)) return [];
  const known = bare.ok ? [] : bare.faults;
  const result = validateBare(laid);
  return unknownOf(result.ok ? [] : result.faults, known).map((fault) => inVariant(fault, laid, index));
}

/** Faults after which no further variant is looked at. */
const ENOUGH = 200;

/** Checks any JSON value as a plan: its version, its values, its references, its variants. */
export function validatePlan(value: unknown): Validated {
  const migrated = migrate(value);
  if (!migrated.ok) return { ok: false, faults: [migrated.fault] };
  const bare = validateBare(migrated.value);
  const known = bare.ok ? [] : bare.faults;
  const variants = migrated.value['variants'];
  const faults: Fault[] = [...known];
  for (const [index, variant] of (Array.isArray(variants) ? (variants as readonly unknown[]) : []).entries()) {
    // Each variant of a plan with faults is as much work as the plan.
    if (faults.length > ENOUGH) break;
    faults.push(...variantFaults(migrated.value, variant, index, bare));
  }
  return bare.ok && faults.length === 0 ? bare : { ok: false, faults };
}

/** The index of a variant by its name, or the unknown name beside the known ones. */
export function variantIndex(
  plan: Plan,
  name: string,
): { readonly ok: true; readonly index: number } | { readonly ok: false; readonly unknown: Unknown } {
  const names = plan.variants.map((variant) => variant.name);
  const index = names.indexOf(name);
  return index >= 0 ? { ok: true, index } : { ok: false, unknown: unknownWord(name, names) };
}
