/** Variants: saved, begun, renamed, applied to the plan, and compared. Each change is one step of undo. */
import { compareAnalyses, type Comparison, type Finding } from '@halfcup/core';
import { batch, effect } from '@preact/signals';
import { computeOpen } from '../view/compute.ts';
import { keep } from '../view/derive.ts';
import { rawPlan, rawStation, setValue, together, valueAt, type Command } from './edits.ts';
import { followed } from '../view/followed.ts';
import type { OpenPlan, Store } from '../store/store.ts';
import { run, showVariant } from './workbench.ts';
import { dropTrial, planWithoutTrial } from '../store/trial.ts';

/** The name of the plan without any variant. */
export const MAIN_PLAN = 'Main plan';
/** Names that mean the main plan, here and on the command line. */
const RESERVED: ReadonlySet<string> = new Set(['main plan', 'as planned']);
export const variantName = (variant: string | null): string => variant ?? MAIN_PLAN;

type Patch = Readonly<Record<string, unknown>>;

const indexOf = (open: OpenPlan, name: string): number =>
  open.document.plan.variants.findIndex((one) => one.name === name);

/** What is wrong with a name for a variant; `own`: the name that it has now. */
export function nameTrouble(open: OpenPlan, name: string, own: string | null = null): string | null {
  if (name === '') return 'Type a name for the variant, such as “nearer to the school”.';
  if (name === own) return null;
  if (RESERVED.has(name.toLowerCase())) return `“${name}” means the plan itself. Choose another name.`;
  const clash = open.document.plan.variants.find(
    (one) => one.name.toLowerCase() === name.toLowerCase() && one.name !== own,
  );
  return clash === undefined ? null : `There is already a variant “${clash.name}”. Choose another name.`;
}

/** Adds an entry to a list of the plan, which the file may lack. */
export const appended = (list: string, entry: unknown, label: string): Command => ({
  label,
  edit: (open) =>
    (valueAt(rawPlan(open.document), [list]) === undefined
      ? setValue([list], [entry], label)
      : setValue([list, '-'], entry, label)
    ).edit(open),
});

const PLACE_KEYS = ['at', 'on', 'side'] as const;

/** Where a station stands as shown, and all else in which the variant shown differs. */
function placeOf(open: OpenPlan, station: string): Patch {
  const raw = rawStation(open, station);
  const own =
    open.variant === null
      ? {}
      : ((valueAt(rawPlan(open.document), ['variants', indexOf(open, open.variant), 'stations', station]) ??
          {}) as Patch);
  return {
    ...Object.fromEntries(PLACE_KEYS.filter((key) => raw[key] !== undefined).map((key) => [key, raw[key]])),
    ...own,
  };
}

const placesOf = (open: OpenPlan): Patch =>
  Object.fromEntries(open.document.plan.stations.map(({ id }) => [id, placeOf(open, id)]));

/** Carries out a command and shows the variant of that name. */
function runAndShow(store: Store, command: Command, name: string | null): readonly Finding[] {
  const found = run(store, command);
  return found.length > 0 ? found : showVariant(store, name);
}

/** Saves where every station stands as shown as a variant; what is shown stays. */
export const saveAsVariant = (store: Store, name: string): readonly Finding[] => {
  dropTrial(store);
  const open = store.open.value;
  return open === null
    ? []
    : run(store, appended('variants', { name, stations: placesOf(open) }, `save variant ${name}`));
};

/** Begins a variant, equal to the main plan, and shows it. */
export const newVariant = (store: Store, name: string): readonly Finding[] =>
  runAndShow(store, appended('variants', { name, stations: {} }, `new variant ${name}`), name);

/** Adds a variant of given patches by station, and shows it. */
export const addVariant = (store: Store, name: string, stations: Patch): readonly Finding[] =>
  runAndShow(store, appended('variants', { name, stations }, `save variant ${name}`), name);

/** The stations' patches of the variant shown; none for the main plan. */
export const patchesShown = (open: OpenPlan): Patch =>
  open.variant === null
    ? {}
    : ((valueAt(rawPlan(open.document), ['variants', indexOf(open, open.variant), 'stations']) ?? {}) as Patch);

export function renameVariant(store: Store, from: string, to: string): readonly Finding[] {
  const open = store.open.value;
  return open === null || from === to
    ? []
    : run(store, setValue(['variants', indexOf(open, from), 'name'], to, `rename variant ${from}`));
}

export function deleteVariant(store: Store, name: string): readonly Finding[] {
  const open = store.open.value;
  return open === null
    ? []
    : run(store, setValue(['variants', indexOf(open, name)], undefined, `delete variant ${name}`));
}

/** The plan's own stations with a variant's keys; the variant stays, and the plan is shown. */
function applying(open: OpenPlan, name: string): Command {
  const patches = (valueAt(rawPlan(open.document), ['variants', indexOf(open, name), 'stations']) ?? {}) as Readonly<
    Record<string, Patch>
  >;
  const commands = open.document.plan.stations.flatMap(({ id }, index) => {
    const patch = Object.hasOwn(patches, id) ? patches[id]! : {};
    const own = (valueAt(rawPlan(open.document), ['stations', index]) ?? {}) as Patch;
    const other = patch['at'] !== undefined ? 'on' : patch['on'] !== undefined ? 'at' : null;
    const away =
      other === null || own[other] === undefined ? [] : [setValue(['stations', index, other], undefined, '')];
    return [...Object.entries(patch).map(([key, value]) => setValue(['stations', index, key], value, '')), ...away];
  });
  return together(`apply ${name} to the plan`, commands);
}

/** Applies a variant to the plan itself, as one step, and shows the plan. */
export function applyToPlan(store: Store, name: string): readonly Finding[] {
  dropTrial(store);
  const open = store.open.value;
  return open === null ? [] : runAndShow(store, applying(open, name), null);
}

/** Compares what is shown with a variant, with `null` the main plan, with `undefined` nothing. */
export function compareWith(store: Store, variant: string | null | undefined): readonly Finding[] {
  const open = planWithoutTrial(store);
  if (open === null || variant === undefined) {
    store.against.value = null;
    return [];
  }
  const made = computeOpen(open.document, open.files, variant, store.against.value ?? open);
  if (made.ok) store.against.value = made.value;
  return made.ok ? [] : made.findings;
}

/** Keeps what is compared in step with the plan. */
export const followPlan = (store: Store): (() => void) =>
  effect(() => {
    const open = planWithoutTrial(store);
    const against = store.against.peek();
    if (open === null || against === null || (against.document === open.document && against.files === open.files))
      return;
    const variant = followed(against.document.plan, open.document.plan, against.variant);
    batch(() => void compareWith(store, variant));
  });

const comparing: (after: OpenPlan) => (before: OpenPlan) => Comparison = keep((after) =>
  keep((before) =>
    compareAnalyses([variantName(before.variant), variantName(after.variant)], before.analysis, after.analysis),
  ),
);

/** What changes from the variant compared to the one shown. */
export const comparisonOf = (before: OpenPlan, after: OpenPlan): Comparison => comparing(after)(before);
