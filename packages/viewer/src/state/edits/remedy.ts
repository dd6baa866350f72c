/** What remedies of findings are made of: their shape, a finding's parameters, and the edits that several share. */
import type { Finding, StationLayout } from '@halfcup/core';
import type { ItemKind, Units } from '@halfcup/core/plan';
import type { OpenPlan } from '../store/store.ts';
import { rawPlan, rawStation, setOfStation, together, valueAt, type Command, type Path } from './edits.ts';

/** One edit of the plan that does away with a finding. */
export interface Remedy {
  /** On its button: what it does. */
  readonly label: string;
  /** When it is done: "The sign stands by the rules." */
  readonly done: string;
  readonly command: Command;
}

/** What a remedy is made from. */
export interface Found<Params> {
  readonly open: OpenPlan;
  readonly finding: Finding;
  /** Of the finding, as core's check gives them. */
  readonly params: Params;
  readonly units: Units;
}

/** One about a station that the plan has. */
export interface FoundAt<Params> extends Found<Params> {
  readonly station: StationLayout;
}

export const remedy = (label: string, done: string, command: Command): Remedy => ({ label, done, command });

/** Takes a value of a station away; `null` where a variant is shown and the main plan has it too, as it would come through. */
export function cleared(open: OpenPlan, station: string, path: Path, label: string): Command | null {
  const [key = ''] = path;
  if (open.variant !== null && path.length === 1) {
    const index = open.document.plan.stations.findIndex(({ id }) => id === station);
    if (valueAt(rawPlan(open.document), ['stations', index, key]) !== undefined) return null;
  }
  return setOfStation(station, path, undefined, label);
}

/** Whether the plan itself has a value of a station, and does not leave it to the rules. */
export const hasOwn = (open: OpenPlan, station: string, path: Path): boolean =>
  valueAt(rawStation(open, station), path) !== undefined;

/** Several values of a station taken away as one step. */
export function clearedTogether(
  open: OpenPlan,
  { id, name }: StationLayout,
  paths: readonly Path[],
  what: string,
): Command | null {
  const commands = paths.filter((path) => hasOwn(open, id, path)).map((path) => cleared(open, id, path, ''));
  const able = commands.filter((command) => command !== null);
  return able.length === 0 || able.length < commands.length ? null : together(`${what}, ${name}`, able);
}

/** Items in a sentence. */
export const THE_ITEM: Readonly<Record<ItemKind, string>> = {
  sign: 'the sign',
  gel: 'the gel',
  sportsDrink: 'the sports drink',
  water: 'the water',
  handOut: 'the hand-out line',
  trash: 'the trash boxes',
};

/** "a, b and c". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

export const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
