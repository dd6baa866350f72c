/**
 * A first station where the field is still packed, or a last one so near the finish that nobody stops. Only in races longer
 * than a leg may be: a shorter one has its station where it can. The limits are the practice's.
 */
import { courseLength, startMeasure } from '../course/course.ts';
import type { Layout } from '../layout/layout.ts';
import { courseById, findById } from '../plan/lookups.ts';
import type { Practice } from '../plan/plan.ts';
import type { Leg, RaceSpacing } from '../station/station.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

type EndCode = 'near-start' | 'near-finish';

const endCheck = (code: EndCode, limitOf: (practice: Practice) => number): Check =>
  check({ code, severity: 'note', source: COMMON_PRACTICE }, (layout) => {
    const limit = limitOf(layout.plan.practice);
    const short = layout.spacing
      .filter((race) => race.legs.length > 1 && isLong(race, layout))
      .map((race) => ({ race, leg: code === 'near-start' ? race.legs[0]! : race.legs.at(-1)! }))
      .filter(({ leg }) => leg.length < limit);
    const stations = [...new Set(short.map(({ leg }) => stationOf(code, leg)))];
    return stations.flatMap((id) =>
      foundAt(
        code,
        short.filter(({ leg }) => stationOf(code, leg) === id),
        limit,
        layout,
      ),
    );
  });

const stationOf = (code: EndCode, leg: Leg): string => (code === 'near-start' ? leg.to : leg.from);

function isLong({ course: id }: RaceSpacing, { plan, courses }: Layout): boolean {
  const { course } = courseById(courses, id);
  return courseLength(course) - startMeasure(course) > plan.practice.maxSpacing;
}

/** The races that share the short way of one station, as one. */
function foundAt(
  code: EndCode,
  short: readonly { readonly race: RaceSpacing; readonly leg: Leg }[],
  limit: number,
  { stations }: Layout,
): Case<EndCode>[] {
  const { race, leg } = short.toSorted((a, b) => a.leg.length - b.leg.length)[0]!;
  const station = findById(stations, stationOf(code, leg));
  const measure = code === 'near-start' ? leg.end : leg.end - leg.length;
  return station === undefined
    ? []
    : [
        {
          params: { measured: leg.length, limit, races: short.map((one) => one.race.race) },
          where: { ...atStation(station), race: race.race, course: race.course, measure },
          measured: leg.length,
          limit,
          unit: 'm',
        },
      ];
}

export const nearStart: Check = endCheck('near-start', ({ firstAfter }) => firstAfter);
export const nearFinish: Check = endCheck('near-finish', ({ lastBefore }) => lastBefore);
