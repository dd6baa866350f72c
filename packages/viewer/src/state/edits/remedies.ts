/**
 * Remedies of findings: where one edit of the plan surely does away with one, that edit, with the words of its button.
 * Where a person has to weigh what to do (move a station, widen a road), there is none.
 */
import type { Finding, StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import type { OpenPlan, Store } from '../store/store.ts';
import { isOpen } from '../view/derive.ts';
import { matterOf, messageOf } from '../view/voice.ts';
import type { Found, FoundAt, Remedy } from './remedy.ts';
import * as ground from './remedyGround.ts';
import * as items from './remedyItems.ts';
import * as plan from './remedyPlan.ts';
import * as runners from './remedyRunners.ts';
import { run } from './workbench.ts';

export type { Remedy } from './remedy.ts';

/** Of a code; its parameters are those that core's check gives (`text/params/` of core). */
type Maker<F> = (given: F) => readonly Remedy[];

const AT_STATION = {
  'sign-distance': items.signDistance,
  'box-distance': items.boxDistance,
  'item-order': items.handPlaced,
  'items-on-top': items.handPlaced,
  'item-across': items.astray,
  'item-off-course': items.astray,
  'sign-in-road': items.signInRoad,
  'boxes-missing': items.boxesMissing,
  'boxes-few': items.boxesFew,
  'tables-mismatch': items.tablesMismatch,
  'side-unclear': runners.sideUnclear,
  'side-contradicted': runners.sideContradicted,
  'lead-far': runners.leadFar,
  'seen-not-served': runners.seenNotServed,
  'passers-not-served': runners.passersNotServed,
  'crosses-flow': runners.tablesForEachWay,
  'served-both-ways': runners.tablesForEachWay,
  'station-off-course': plan.stationOffCourse,
  'item-in-mouth': ground.toClearPlace,
  'item-on-bridge': ground.toClearPlace,
  'item-in-tunnel': ground.toClearPlace,
  'item-on-steps': ground.toClearPlace,
  'item-on-level-crossing': ground.toClearPlace,
  'item-at-stop': ground.toClearPlace,
  'item-on-crossing': ground.toClearPlace,
  'hydrant-blocked': ground.toClearPlace,
  'fire-station-blocked': ground.toClearPlace,
  'hospital-blocked': ground.toClearPlace,
  'narrow-by-map': ground.toClearPlace,
} as unknown as Readonly<Record<string, Maker<FoundAt<unknown>>>>;

const OF_PLAN = {
  'rule-loose': plan.ruleLoose,
  'heat-assumed': plan.heatAssumed,
  'far-from-courses': plan.farFromCourses,
} as unknown as Readonly<Record<string, Maker<Found<unknown>>>>;

const stationOf = (open: OpenPlan, id: string | undefined): StationLayout | undefined =>
  open.analysis.stations.find((station) => station.id === id);

/** The codes of findings that can have a remedy. */
export const REMEDIED: readonly string[] = [...Object.keys(AT_STATION), ...Object.keys(OF_PLAN)];

/** Empty where there is none: of what is waived, of what stands on the ground, and of most findings. */
export function remediesOf(open: OpenPlan, finding: Finding, units: Units): readonly Remedy[] {
  const { code, params, waived, built, where } = finding;
  if (params === undefined || waived !== undefined || built === true) return [];
  const given = { open, finding, params, units };
  if (Object.hasOwn(OF_PLAN, code)) return OF_PLAN[code]!(given);
  const station = stationOf(open, where.station);
  return station === undefined || !Object.hasOwn(AT_STATION, code) ? [] : AT_STATION[code]!({ ...given, station });
}

/** A finding without its figures. */
const keyOf = ({ code, where: { station, race, course, item } }: Finding): string =>
  JSON.stringify([code, station, race, course, item]);

const errorsOf = ({ findings }: OpenPlan): Finding[] =>
  findings.filter((finding) => finding.severity === 'error' && isOpen(finding));

/** What has come of a remedy: why the plan did not take it, else what is done and the first error that it has brought. */
export type Applied = { readonly refused: string } | { readonly done: string; readonly brings: string | null };

/** Carries a remedy out. */
export function applyRemedy(store: Store, { command, done }: Remedy): Applied {
  const before = store.open.value;
  const [refused] = run(store, command);
  if (refused !== undefined) return { refused: messageOf(store, refused) };
  const after = store.open.value;
  const known = new Set(before === null ? [] : errorsOf(before).map(keyOf));
  const [error] = after === null ? [] : errorsOf(after).filter((finding) => !known.has(keyOf(finding)));
  return { done, brings: error === undefined ? null : matterOf(store, error) };
}
