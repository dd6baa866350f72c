/**
 * Stations for the two ways of one road that both stand on one kerb: where runners keep to the side of the one station's
 * tables, those of the other way run between the other's tables and its runners, who must cross them. Only where both ways
 * are drawn as one line: where they are not, the lines tell who crosses whom.
 */
import type { Layout, StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import type { DeclaredSide } from '../kinds.ts';
import { leadPass } from '../station/directions.ts';
import type { StationPass } from '../station/station.ts';
import { type Case, atStation } from './check.ts';
import { againstOnRoad } from './flowsShareWidth.ts';
import { tableEnds } from './standing.ts';

/** Lines nearer than this, metres, do not tell the two ways apart. */
const ONE_LINE = 4;
/** By so much, metres, and by such a share may the way between two stations differ out and back on one road. */
const SAME_WAY = { metres: 30, share: 0.02 };

/** A station with the runners whom its tables are for, and those who come against them on its road. */
interface OneWay {
  readonly station: StationLayout;
  readonly side: DeclaredSide;
  readonly led: StationPass;
  readonly against: readonly StationPass[];
}

/** One finding for all stations of a road that stand so. */
export function oneKerb({ stations }: Layout): Case<'crosses-flow'>[] {
  const ways = stations.flatMap(oneWayOf);
  const groups: OneWay[][] = [];
  for (const [k, one] of ways.entries())
    for (const other of ways.slice(k + 1)) {
      if (!onOneKerb(one, other)) continue;
      const group = groups.find((list) => list.includes(one) || list.includes(other));
      if (group === undefined) groups.push([one, other]);
      else group.push(...[one, other].filter((way) => !group.includes(way)));
    }
  return groups.map(caseOf);
}

/** `null` of those whose other way is served too, which has a finding of its own, or is drawn apart. */
function oneWayOf(station: StationLayout): OneWay[] {
  const lead = leadOf(station);
  if (lead === undefined || lead.side === 'unclear' || tableEnds(lead) === null) return [];
  const led = station.passes[leadPass(station.station, station.passes)]!;
  const against = againstOnRoad(station).filter((pass) => Math.abs(led.offset + pass.offset) < ONE_LINE);
  return against.length === 0 || against.some(({ served }) => served)
    ? []
    : [{ station, side: lead.side, led, against }];
}

/** Whether each serves the way that comes against the other, along one road between them, left of the one and right of the other. */
function onOneKerb(one: OneWay, other: OneWay): boolean {
  if (one.side === other.side) return false;
  const there = one.against.filter(({ course }) => course === other.led.course);
  const back = other.against.filter(({ course }) => course === one.led.course);
  return there.some((pass) =>
    back.some((its) => {
      const [a, b] = [its.measure - one.led.measure, pass.measure - other.led.measure];
      const room = SAME_WAY.metres + SAME_WAY.share * Math.abs(a);
      return a * b >= 0 && Math.abs(a - b) <= room;
    }),
  );
}

function caseOf(group: readonly OneWay[]): Case<'crosses-flow'> {
  const [first, second] = group as readonly [OneWay, OneWay];
  const { course, race, measure } = second.led;
  return {
    params: {
      other: [{ race, measure }],
      farther: null,
      sideUnclear: false,
      kerb: group.map(({ station }) => station.id),
    },
    where: { ...atStation(first.station, 'side'), course, race, measure },
    measured: group.length,
  };
}
