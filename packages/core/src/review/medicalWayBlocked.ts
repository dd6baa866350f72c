/**
 * The way from a medical point to its access point: tables or a sign on it, or runners across it. The way is taken as
 * straight. Boxes on it: `trash-blocks-medical`.
 */
import type { Layout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { apart, footprints } from './footprints.ts';
import { passOfPoint, refOf } from './points.ts';
import { type Pair, pairsOf } from './trashBlocksMedical.ts';
import { kindsOf } from './together.ts';
import { local } from './zones.ts';

/** Half of what a stretcher with its bearers takes, metres. */
const HALF_WAY = 1;

export const medicalWayBlocked: Check = check(
  {
    code: 'medical-way-blocked',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) => (pairsOf(layout).length > 0 ? null : 'no-medical-with-access'),
  },
  (layout) => pairsOf(layout).flatMap((pair) => acrossFlow(pair, layout) ?? onItems(pair)),
);

const whereOf = ({ medical }: Pair): Case<'medical-way-blocked'>['where'] => ({
  ...atStation(medical.station, medical.key),
  at: medical.point.at,
});

/** `null` where the two points are on one side, or their sides are not told. */
function acrossFlow(pair: Pair, layout: Layout): Case<'medical-way-blocked'>[] | null {
  const { medical, access } = pair;
  const { station } = medical;
  const lead = leadOf(station);
  if (lead === undefined) return null;
  const [one, other] = [medical, access].map(({ point }) => passOfPoint(point.at, lead, station, layout)?.side);
  if (one === undefined || other === undefined || one === 'unclear' || other === 'unclear' || one === other)
    return null;
  const params = { medical: refOf(medical), access: refOf(access), by: 'flow', side: one } as const;
  return [{ params, where: { ...whereOf(pair), course: lead.course } }];
}

function onItems(pair: Pair): Case<'medical-way-blocked'>[] {
  const { medical, access } = pair;
  const { station } = medical;
  const way = [local(station.at, medical.point.at), local(station.at, access.point.at)] as const;
  const met = footprints(station)
    .filter(({ kind }) => kind !== 'trash')
    .map(({ kind, line }) => ({ kind, distance: apart(way, line) }))
    .filter(({ distance }) => distance < HALF_WAY);
  const [nearest] = met.toSorted((a, b) => a.distance - b.distance);
  if (nearest === undefined) return [];
  const items = kindsOf(met);
  return [
    {
      params: { medical: refOf(medical), access: refOf(access), by: 'items', items },
      where: { ...whereOf(pair), item: nearest.kind },
      measured: nearest.distance,
      limit: HALF_WAY,
      unit: 'm',
    },
  ];
}
