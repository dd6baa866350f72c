/** What a planted mistake is, and the few moves by which coordinators make them. Not part of the package. */
import { type Foot, type Ground, pinAt, placeBy, pointsAt } from './build.ts';
import type { PlanName } from './goodPlans.ts';
import type { ClockText, FileTexts, Pair, PlanText, RaceText, StationText } from './planText.ts';

/** One mistake in one good plan. */
export interface Planted {
  readonly name: string;
  readonly plan: PlanName;
  /** Changes the plan's text, and its files, in place. */
  readonly plant: (plan: PlanText, ground: Ground, files: FileTexts) => void;
  /** Of findings that name the matter. */
  readonly codes: readonly string[];
  /** Ids or names of what was changed, one of which the finding has to name; none: the matter is the whole plan's. */
  readonly about: readonly string[];
  /** A note is enough. */
  readonly note?: true;
}

/** What plants change of a plan. */
export type Plant = Planted['plant'];

export const stationIn = (plan: PlanText, id: string): StationText => plan.stations.find((one) => one.id === id)!;
export const raceIn = (plan: PlanText, id: string): RaceText => plan.races.find((one) => one.id === id)!;
export const clockIn = (plan: PlanText, course: string): ClockText[] =>
  plan.clock.filter((one) => one.course === course);

/** A change of one station's keys. */
export const ofStation =
  (id: string, keys: Partial<StationText>): Plant =>
  (plan) =>
    void Object.assign(stationIn(plan, id), keys);

/** A change of one race's keys. */
export const ofRace =
  (id: string, keys: Partial<RaceText>): Plant =>
  (plan) =>
    void Object.assign(raceIn(plan, id), keys);

/** A change of one entry of a course's clock, counted from 0. */
export const ofClock =
  (course: string, entry: number, keys: Partial<ClockText>): Plant =>
  (plan) =>
    void Object.assign(clockIn(plan, course)[entry]!, keys);

/** A change of the times of every entry of a course's clock. */
export const ofClocks =
  (course: string, change: (entry: ClockText) => Partial<ClockText>): Plant =>
  (plan) => {
    for (const entry of clockIn(plan, course)) Object.assign(entry, change(entry));
  };

/** Several changes, which together are one mistake. */
export const all =
  (...plants: readonly Plant[]): Plant =>
  (plan, ground, files) => {
    for (const plant of plants) plant(plan, ground, files);
  };

/** A station with its points moved along the course by so many metres, and to the other side perhaps. */
export const moved =
  (id: string, by: number | ((ground: Ground) => number), keys: Partial<Foot> = {}): Plant =>
  (plan, ground) => {
    const station = stationIn(plan, id);
    const foot = ground.foot(id);
    const metres = typeof by === 'number' ? by : by(ground) - foot.measure;
    const there = { ...foot, measure: foot.measure + metres, ...keys };
    const medical = station.points.some(({ kind }) => kind === 'medical');
    const points = pointsAt(there, ground, 'Road', medical);
    Object.assign(station, pinAt(there, ground, station.at === undefined ? 'on' : 'at'), { side: there.side, points });
  };

type Placed = keyof NonNullable<StationText['items']>;

/** An item put by hand: metres downstream of the pin, and beyond the kerb. */
export const byHand =
  (id: string, kind: Placed, along: number, beyond: number = 0.5): Plant =>
  (plan, ground) => {
    const station = stationIn(plan, id);
    station.items = { ...station.items, [kind]: { at: placeBy(ground.foot(id), ground, along, beyond) } };
  };

/** The points of one kind put elsewhere: metres downstream of the pin, and beyond the kerb. */
export const pointTo =
  (id: string, kind: string, along: number, beyond: number): Plant =>
  (plan, ground) => {
    for (const point of stationIn(plan, id).points)
      if (point.kind === kind) point.at = placeBy(ground.foot(id), ground, along, beyond);
  };

/** Points of some kinds left out, at every station or at some. */
export const without =
  (kinds: readonly string[], ids?: readonly string[]): Plant =>
  (plan) => {
    for (const station of plan.stations)
      if (ids === undefined || ids.includes(station.id))
        station.points = station.points.filter(({ kind }) => !kinds.includes(kind));
  };

export const swappedPair = ([lon, lat]: Pair): Pair => [lat, lon];
