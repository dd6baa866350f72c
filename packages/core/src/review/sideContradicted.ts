/** A declared side that the pin's own position contradicts with confidence; where the side is that of another way that runners come, it is the way that is asked. */
import type { DeclaredSide } from '../kinds.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { leadPass, servesRace } from '../station/directions.ts';
import { runsAgainst } from '../station/sides.ts';
import type { StationPass } from '../station/station.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Farther from the pin than the lead by more than this, metres, another way runs on another road. */
const ONE_ROAD = 10;

/** Stations of other courses that a course passes against their runners, and none with them, from which on it runs the other way. */
const SOME = 2;
/** So many contradicted stations, and so many times those that agree, and the course runs the other way. */
const MANY = 3;

export const sideContradicted: Check = check(
  {
    code: 'side-contradicted',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) => {
    const against = layout.stations.filter(isContradicted);
    const turned = layout.plan.courses.filter(({ id }) => isTurned(id, against, layout)).map(({ id }) => id);
    return [
      ...turned.map((id) => turnedCourse(id, against, layout)),
      ...against.filter((station) => !turned.includes(leadOf(station)!.course)).map(contradicted),
    ];
  },
);

const leadOfPin = (station: StationLayout): StationPass => station.passes[leadPass(station.station, station.passes)]!;

/** Whether the declared side is surely not that of the pin: what stands where the pin is stands across from the tables, for that one cause. */
export function isContradicted(station: StationLayout): boolean {
  if (leadOf(station) === undefined || station.declared === null) return false;
  const { side } = leadOfPin(station);
  return side !== 'unclear' && side !== station.declared;
}

/** Whether all but a few of the stations that a course leads contradict it, those placed by its own distance and side aside. */
function isTurned(course: string, against: readonly StationLayout[], { stations }: Layout): boolean {
  const here = (station: StationLayout): boolean => leadOf(station)?.course === course;
  const agree = stations.filter(
    (station) =>
      here(station) &&
      station.station.at !== undefined &&
      station.declared !== null &&
      leadOfPin(station).side === station.declared,
  );
  const contrary = against.filter(here).length;
  if (contrary >= MANY && contrary >= MANY * agree.length) return true;
  return contrary > 0 && agree.length === 0 && againstOthers(course, stations).length >= SOME;
}

/** Stations of other courses that serve races of a course and at which all its passes run against the lead; none where it runs with any. */
function againstOthers(course: string, stations: readonly StationLayout[]): StationLayout[] {
  const met = stations.flatMap((station) => {
    const lead = leadOf(station);
    if (lead === undefined || lead.course === course) return [];
    const own = station.passes.filter(
      (pass) => pass.course === course && pass.end === undefined && servesRace(station.station, pass.race),
    );
    const against = own.every((pass) => runsAgainst(pass.azimuthDeg, lead.azimuthDeg));
    return own.length === 0 ? [] : [{ station, against }];
  });
  return met.every(({ against }) => against) ? met.map(({ station }) => station) : [];
}

function turnedCourse(
  id: string,
  against: readonly StationLayout[],
  { plan, stations }: Layout,
): Case<'side-contradicted'> {
  const here = against.filter((station) => leadOf(station)!.course === id);
  const index = plan.courses.findIndex((course) => course.id === id);
  const others = againstOthers(id, stations).map((station) => station.id);
  return {
    params: {
      ...paramsOf(here[0]!),
      turned: {
        course: id,
        stations: here.map((station) => station.id),
        ...(others.length >= SOME ? { against: others } : {}),
      },
    },
    where: { path: `/courses/${index}`, course: id },
    measured: here.length,
    // It crosses the others wherever they meet, which is not told again at each station.
    ...(others.length >= SOME ? { severity: 'error' as const } : {}),
  };
}

function paramsOf(station: StationLayout): Omit<Case<'side-contradicted'>['params'], 'turned'> {
  const pass = leadOfPin(station);
  const fits = passThatFits(pass, station);
  return {
    declared: station.declared!,
    side: pass.side as DeclaredSide,
    offset: pass.offset,
    confidence: pass.confidence,
    fits: fits === undefined ? null : { race: fits.race, measure: fits.measure },
  };
}

function contradicted(station: StationLayout): Case<'side-contradicted'> {
  const params = paramsOf(station);
  const pass = leadOfPin(station);
  return {
    params: { ...params, turned: null },
    where: {
      ...atStation(station, params.fits === null ? 'side' : 'lead'),
      measure: pass.measure,
      course: pass.course,
    },
    measured: pass.offset,
    unit: 'm',
  };
}

/** The nearest pass against the lead, on its road, whose runners see the pin on the declared side. */
function passThatFits(lead: StationPass, { station, passes, declared }: StationLayout): StationPass | undefined {
  return passes
    .filter(
      (pass) =>
        pass.side === declared &&
        pass.end === undefined &&
        servesRace(station, pass.race) &&
        runsAgainst(pass.azimuthDeg, lead.azimuthDeg) &&
        pass.distance <= lead.distance + ONE_ROAD,
    )
    .sort((a, b) => a.distance - b.distance)[0];
}
