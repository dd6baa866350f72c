/** One captain, call sign or telephone for two stations that are open at the same time, and not beside each other. */
import { inverseLength } from '../geodesy/karney.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, type DayFacts, ruled, makeFinding } from './check.ts';
import { saysNothing } from './placeholder.ts';

/** Two stations no farther apart, metres, can have one captain: both sides of a road, say. */
const BESIDE = 100;
const WHATS = ['captain', 'radio', 'phone'] as const;
type What = (typeof WHATS)[number];

const RULE = { code: 'shared-contact', severity: 'warning', source: COMMON_PRACTICE } as const;

/** What makes two entries the same: letters in any case, a telephone by its digits. */
function sameKey(what: What, text: string): string {
  const plain = text.trim().toLowerCase().replaceAll(/\s+/gu, ' ');
  return what === 'phone' ? plain.replaceAll(/[^\d+a-z]/gu, '') : plain;
}

/** From when to when a station is staffed; all day where nobody knows. */
function spanOf(id: string, facts: DayFacts | null): readonly [number, number] {
  const day = facts === null ? undefined : findById(facts.day.stations, id);
  return [day?.crewAt ?? -Infinity, day?.packedAt ?? day?.openUntil ?? Infinity];
}

function together(a: StationLayout, b: StationLayout, facts: DayFacts | null): boolean {
  const [from, to] = spanOf(a.id, facts);
  const [otherFrom, otherTo] = spanOf(b.id, facts);
  return from < otherTo && otherFrom < to && inverseLength(a.at[0], a.at[1], b.at[0], b.at[1]) > BESIDE;
}

function casesOf(what: What, { stations, plan }: Layout, facts: DayFacts | null): Case<'shared-contact'>[] {
  const groups = new Map<string, StationLayout[]>();
  // A channel in the place of a call sign is everybody's.
  const channel = what === 'radio' ? sameKey(what, plan.contacts.radioChannel ?? '') : '';
  for (const station of stations) {
    const given = station.station.people[what];
    const key = sameKey(what, given ?? '');
    if (!saysNothing(given) && key !== '' && key !== channel) groups.set(key, [...(groups.get(key) ?? []), station]);
  }
  return [...groups.values()].flatMap((group) => {
    const clash = group.filter((one) => group.some((other) => other !== one && together(one, other, facts)));
    if (clash.length === 0) return [];
    const value = clash[0]!.station.people[what]!.trim();
    return [
      {
        params: { what, value, stations: clash.map(({ id }) => id) },
        where: { path: '/stations' },
        measured: clash.length,
        limit: 1,
      },
    ];
  });
}

export const sharedContact: Check = {
  ...ruled({ ...RULE, missing: ({ stations }) => (stations.length > 1 ? null : 'one-station') }),
  find: (layout, facts = null) =>
    WHATS.flatMap((what) => casesOf(what, layout, facts)).map(({ params, ...facts }) =>
      makeFinding(RULE.code, params, { severity: RULE.severity, source: RULE.source, ...facts }),
    ),
};
