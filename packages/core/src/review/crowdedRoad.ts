/**
 * How close runners are at the first station of each race, and at stations behind a place where courses join: the most
 * that are at once on a stretch of road around the tables, on the width that stays free beside them. The limit is common
 * practice, no source: room in which walkers no longer choose their pace or pass others freely. Runners slow down at tables, and
 * running takes more room than walking.
 */
import type { Layout, StationLayout } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import type { RaceOnCourse } from '../raceday/arrivals.ts';
import type { RaceDay } from '../raceday/day.ts';
import { type StretchOf, mostRunners } from '../raceday/crowd.ts';
import { metres } from '../units.ts';
import { COMMON_PRACTICE, type Case, type Check, type DayFacts, atStation, dayCheck } from './check.ts';
import { clearBeside } from './clearWidth.ts';

/** Course before and after the tables that counts, metres. */
const AROUND = 10;
/** Square metres that one person has at least: 25 sq ft. */
const LEAST: number = 25 * metres(1, 'ft') ** 2;

/** Stations that a race passes, in running order, each once: as it comes to it first. */
function alongRace({ stations }: Layout, race: string): StationLayout[] {
  return stations
    .flatMap((station) => {
      const first = station.passes.find((pass) => pass.race === race);
      return first === undefined ? [] : [{ station, measure: first.measure }];
    })
    .sort((a, b) => a.measure - b.measure)
    .map(({ station }) => station);
}

const racesAt = ({ passes }: StationLayout): Set<string> => new Set(passes.map(({ race }) => race));

/** The first station of a race, and each at which another race is that was not at the one before. */
function crowdedStations(layout: Layout, race: string): StationLayout[] {
  const along = alongRace(layout, race);
  return along.filter((station, k) => {
    if (k === 0) return true;
    const before = racesAt(along[k - 1]!);
    return [...racesAt(station)].some((other) => !before.has(other));
  });
}

/** Width of road that runners have beside the tables, or that of the start where the station gives none and is the first. */
function widthAt(station: StationLayout, layout: Layout): number | null {
  const clear = clearBeside(station)?.clear;
  if (clear !== undefined) return clear > 0 ? clear : null;
  const firstOf = layout.plan.races.filter(
    ({ id, startWidth }) => startWidth !== undefined && alongRace(layout, id)[0] === station,
  );
  return firstOf.length === 0 ? null : Math.min(...firstOf.map(({ startWidth }) => startWidth!));
}

function stretchesAt(station: StationLayout, races: readonly RaceOnCourse[]): StretchOf[] {
  return station.passes.flatMap((pass) => {
    const race = races.find(({ field }) => field.race.id === pass.race);
    if (race === undefined) return [];
    const [start, finish] = race.ends;
    return [{ race, from: Math.max(pass.measure - AROUND, start), to: Math.min(pass.measure + AROUND, finish) }];
  });
}

/** Whether the busiest minute brings no more: nobody is on so short a stretch for longer. Only served passes are in it. */
const neverMore = ({ id, passes }: StationLayout, most: number, day: RaceDay): boolean =>
  passes.every(({ served }) => served) && (findById(day.stations, id)?.peak?.count ?? 0) <= most;

function crowdAt(station: StationLayout, layout: Layout, { races, day }: DayFacts): Case<'crowded-road'>[] {
  const width = widthAt(station, layout);
  if (width === null) return [];
  const most = Math.floor((2 * AROUND * width) / LEAST);
  if (neverMore(station, most, day)) return [];
  const stretches = stretchesAt(station, races);
  const found = mostRunners(stretches);
  if (found === null || found.count <= most) return [];
  const ids = [...new Set(stretches.map(({ race }) => race.field.race.id))];
  return [
    {
      params: { runners: found.count, most, over: 2 * AROUND, width, at: found.at, races: ids },
      where: atStation(station),
      measured: found.count,
      limit: most,
      unit: 'persons',
    },
  ];
}

const watched = (layout: Layout): StationLayout[] => {
  const chosen = new Set(layout.plan.races.flatMap(({ id }) => crowdedStations(layout, id)));
  return layout.stations.filter((station) => chosen.has(station));
};

export const crowdedRoad: Check = dayCheck(
  {
    code: 'crowded-road',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) =>
      watched(layout).some((station) => widthAt(station, layout) !== null) ? null : 'no-crowd-width',
  },
  (layout, facts) => watched(layout).flatMap((station) => crowdAt(station, layout, facts)),
);
