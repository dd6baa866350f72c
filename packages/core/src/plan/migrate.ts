/**
 * Numbered versions of the plan format. Each migration turns the value of one version into the
 * next; version 1 is the first, so the list is still empty.
 */
import { foundOf } from '../text/found.ts';
import type { Fault } from './fault.ts';

/** The version that this program writes. */
export const PLAN_VERSION = 1;

export interface Migration {
  readonly from: number;
  /** A plan's value of version `from` as one of version `from + 1`. */
  readonly up: (plan: { readonly [key: string]: unknown }) => { readonly [key: string]: unknown };
}

export const MIGRATIONS: readonly Migration[] = [];

type Migrated =
  | { readonly ok: true; readonly value: { readonly [key: string]: unknown } }
  | { readonly ok: false; readonly fault: Fault };

function versionFault(found: unknown, current: number): Fault | undefined {
  if (typeof found !== 'number' || !Number.isInteger(found) || found < 1)
    return { code: 'plan-version', path: ['version'], problem: { problem: 'version', found: foundOf(found), current } };
  if (found <= current) return undefined;
  return { code: 'plan-version', path: ['version'], problem: { problem: 'later', found, current } };
}

/** A plan's value as one of the current version; refuses what is no plan, and versions it does not know. */
export function migrate(
  plan: unknown,
  migrations: readonly Migration[] = MIGRATIONS,
  current: number = PLAN_VERSION,
): Migrated {
  if (typeof plan !== 'object' || plan === null || Array.isArray(plan)) {
    return {
      ok: false,
      fault: {
        code: 'plan-version',
        path: [],
        problem: { problem: 'noPlan', found: foundOf(plan), version: current },
      },
    };
  }
  const entry = plan as { readonly [key: string]: unknown };
  if (entry['format'] !== 'halfcup-plan') {
    const found = foundOf(entry['format']);
    return { ok: false, fault: { code: 'plan-version', path: ['format'], problem: { problem: 'format', found } } };
  }
  const fault = versionFault(entry['version'], current);
  if (fault !== undefined) return { ok: false, fault };
  let value = entry;
  for (let version = entry['version'] as number; version < current; version++) {
    const step = migrations.find((one) => one.from === version);
    if (step === undefined) throw new Error(`no migration from version ${version}`);
    value = { ...step.up(value), version: version + 1 };
  }
  return { ok: true, value };
}
