/** Remedies of rules looser than usual, of the heat that is assumed, and of swapped coordinates. */
import type { LonLat } from '@halfcup/core';
import { swappedPosition } from '@halfcup/core/geometry';
import type { OpenPlan } from '../store/store.ts';
import { moveStation, rawPlan, setOfStation, setValue, together, valueAt, type Command, type Path } from './edits.ts';
import { remedy, type Found, type FoundAt, type Remedy } from './remedy.ts';

interface LooseRule {
  readonly rule: string;
  readonly station: string | null;
}

export function ruleLoose({ params: { rules } }: Found<{ readonly rules: readonly LooseRule[] }>): readonly Remedy[] {
  const many = rules.length > 1;
  const what = many ? `the ${rules.length} usual values` : 'the usual value';
  const commands = rules.map(({ rule, station }) =>
    station === null
      ? setValue(['practice', rule], undefined, '')
      : setOfStation(station, ['practice', rule], undefined, ''),
  );
  return [
    remedy(
      `Restore ${what}`,
      many ? 'The usual values hold again.' : 'The usual value holds again.',
      together(`restore ${what}`, commands),
    ),
  ];
}

/** A value of the plan's supplies, or of those of the station that the finding is about. */
function setSupplies({ open, finding }: Found<unknown>, key: string, value: unknown, label: string): Command {
  const { station } = finding.where;
  const name = open.analysis.stations.find(({ id }) => id === station)?.name;
  return station === undefined || name === undefined
    ? setValue(['supplies', key], value, label)
    : setOfStation(station, ['supplies', key], value, `${label}, ${name}`);
}

export const heatAssumed = (given: Found<unknown>): readonly Remedy[] =>
  (['cool', 'warm', 'hot'] as const).map((heat) =>
    remedy(
      `Plan for ${heat} weather`,
      `Cups are worked out for ${heat} weather.`,
      setSupplies(given, 'heat', heat, `plan for ${heat} weather`),
    ),
  );

const EXCHANGE = 'Exchange longitude and latitude';

export const stationOffCourse = ({
  station: { id, name, station },
  params: { swapped },
}: FoundAt<{ readonly swapped: LonLat | null }>): readonly Remedy[] =>
  swapped === null || station.at === undefined
    ? []
    : [
        remedy(
          EXCHANGE,
          `${name} stands where its two numbers, exchanged, say.`,
          moveStation(id, name, { at: [swapped[0], swapped[1]] }, null),
        ),
      ];

const exchanged = (pair: unknown): unknown =>
  Array.isArray(pair) ? [pair[1], pair[0], ...(pair.slice(2) as unknown[])] : pair;

/** Zones and points whose two numbers are swapped, each as the edit that exchanges them. */
function exchanges(open: OpenPlan): readonly Command[] {
  const { courses, plan } = open.analysis;
  const isSwapped = (at: LonLat | undefined): boolean =>
    at !== undefined && courses.some((indexed) => swappedPosition(indexed, at) !== null);
  const raw = rawPlan(open.document);
  const zones = plan.zones.flatMap(({ polygon }, k) => {
    const path: Path = ['zones', k, 'polygon'];
    const corners = valueAt(raw, path);
    return isSwapped(polygon[0]) && Array.isArray(corners) ? [setValue(path, corners.map(exchanged), '')] : [];
  });
  const points = plan.stations.flatMap(({ id, points: own }) =>
    own.flatMap(({ at }, k) => (isSwapped(at) ? [setOfStation(id, ['points', k, 'at'], [at[1], at[0]], '')] : [])),
  );
  return [...zones, ...points];
}

export function farFromCourses({
  open,
  params: { things },
}: Found<{ readonly things: readonly { readonly swapped: boolean }[] }>): readonly Remedy[] {
  const count = things.filter(({ swapped }) => swapped).length;
  const commands = count === 0 ? [] : exchanges(open);
  if (commands.length === 0) return [];
  const of = things.length === 1 ? '' : count === things.length ? ` of all ${count}` : ` of ${count} of them`;
  return [
    remedy(
      `${EXCHANGE}${of}`,
      `Longitude and latitude${of} are exchanged.`,
      together('exchange longitude and latitude', commands),
    ),
  ];
}
