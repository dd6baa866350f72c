/** What a waiver was given for: the thing that a finding is about, and how far off it was. */
import { type Finding, isFinding } from '../finding.ts';
import type { Seen } from '../plan/plan.ts';
import { want } from '../wants.ts';

/** Parameters of findings that name a thing: a zone, another station, items, a point. Their places and figures may change. */
const THINGS = [
  'zone',
  'other',
  'before',
  'item',
  'items',
  'point',
  'medical',
  'courses',
  'from',
  'to',
  'name',
  'value',
] as const;

/** By so much of what was measured may it get worse. */
const ROOM = 0.1;

/** A thing as a text: names and kinds joined; `null` for what is no name. */
function nameOf(value: unknown): string | null {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) {
    const names = value.map(nameOf);
    return names.length === 0 || names.includes(null) ? null : names.join(', ');
  }
  if (typeof value !== 'object' || value === null || !('kind' in value)) return null;
  const { kind, name } = value as { readonly kind: unknown; readonly name?: unknown };
  return typeof kind === 'string' ? [kind, ...(typeof name === 'string' ? [name] : [])].join(' ') : null;
}

/**
 * What a finding shows, to be kept in the waiver that is given for it: the race, the items, the zone or the other station that it is
 * about, and what was measured, in the finding's own unit. Empty where it names nothing and measures nothing.
 * @example
 * ```ts
 * import { seenOf } from '@halfcup/core/plan';
 * const finding = { code: 'sign-distance', severity: 'error', message: 'm', where: { station: 's1', item: 'sign' }, measured: 70.2 } as const;
 * seenOf(finding); // → { item: 'sign', measured: 70.2 }
 * ```
 */
export function seenOf(finding: Finding): Seen {
  want('seenOf', 'finding', isFinding, finding);
  return shown(finding);
}

function shown(finding: Finding): Seen {
  const { where, params, measured } = finding;
  const things = THINGS.flatMap((key) => {
    const name = nameOf(params?.[key]);
    return name === null ? [] : [[key, name] as const];
  });
  return {
    ...(finding.built === true ? { built: 'recorded' } : {}),
    ...(where.race === undefined ? {} : { race: where.race }),
    ...(where.item === undefined ? {} : { item: where.item }),
    ...Object.fromEntries(things),
    ...(measured === undefined ? {} : { measured: Math.round(measured * 1000) / 1000 + 0 }),
  };
}

/** Whether what a waiver was given for is still what is found: the same thing (`other` where not), and no worse than by a tenth (`worse`). */
export function stillSeen(seen: Seen, finding: Finding): 'same' | 'other' | 'worse' {
  const { measured: before, ...things } = seen;
  const { measured: now, ...found } = shown(finding);
  const keys = new Set([...Object.keys(things), ...Object.keys(found)]);
  if ([...keys].some((key) => things[key] !== found[key])) return 'other';
  if (before === undefined || now === undefined) return before === now ? 'same' : 'other';
  return isWorse(Number(before), Number(now), finding.limit) ? 'worse' : 'same';
}

/** Farther beyond the same limit by more than a tenth of what was measured, or beyond the other one. */
function isWorse(before: number, now: number, limit: Finding['limit']): boolean {
  if (limit === undefined) return Math.abs(now) > Math.abs(before) * (1 + ROOM) + 1e-9;
  const [low, high] = typeof limit === 'number' ? [limit, limit] : limit;
  const room = ROOM * Math.abs(before) + 1e-9;
  if (before > high) return now > before + room || now < low;
  return now < before - room || now > high;
}
