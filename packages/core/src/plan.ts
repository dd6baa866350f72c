/**
 * The face `@halfcup/core/plan`: the records that a plan is made of, as people write them and as `readPlan` gives them, and the
 * kinds of things in them.
 * @module @halfcup/core/plan
 */

// As it is written
export type {
  ClockInput,
  CourseInput,
  CrewInput,
  FinishInput,
  MarkInput,
  PlanInput,
  PracticeInput,
  Quantity,
  RaceInput,
  StationChanges,
  StationInput,
  SuppliesInput,
  VehicleInput,
  WaveInput,
  WeatherInput,
  PersonInput,
  PriceInput,
} from './plan/input.ts';

// As it is read: SI quantities, defaults filled in
export type {
  Crew,
  DeclaredSide,
  Division,
  FinishTimes,
  Heat,
  Packs,
  PassChoice,
  Place,
  Plan,
  PlanClock,
  PlanCourse,
  PlanDocument,
  PlanMark,
  PlanPart,
  PlanPoint,
  PlanRace,
  PlanStation,
  PlanVariant,
  PlanVehicle,
  PlanWaiver,
  PlanWave,
  PlanWeather,
  PlanPerson,
  PlanPrice,
  PlanPrices,
  PricedKind,
  PlanZone,
  PointKind,
  Practice,
  Seen,
  Served,
  Supplies,
  SuppliesOverride,
  TakeRates,
  Units,
} from './plan/plan.ts';
export type { Drawn, GapRule } from './course/course.ts';

// Lists of stations
export type { ListCourse, ListedStation, StationListOptions } from './plan/list/listed.ts';
export { listColumns, readStationList } from './plan/list/read.ts';
export { type ListLanguage, stationListText } from './export/stationList.ts';
export type { ListColumn } from './plan/list/heads.ts';

// A first plan from several courses and what a person answers
export type { CourseAnswers, RaceAnswers, SetUpAnswers, StationAnswers } from './plan/setUp/answers.ts';
export { type OfferedCourse, offeredCourse } from './plan/setUp/offer.ts';
export { typedCount } from './plan/setUp/count.ts';
export { raceFaults } from './plan/setUp/races.ts';
export { setUpPlan } from './plan/setUp/setUp.ts';

export type { IndexedCourse } from './course/segmentIndex.ts';

// What a waiver is bound to
export { seenOf } from './review/seen.ts';
export { covers } from './review/waivers.ts';

// The kinds of items
export { ITEM_KINDS, type ItemForm, type ItemKind, formOf } from './kinds.ts';

// The text of a plan, a table or a drawing, strictly
export { textFrom } from './plan/utf8.ts';

// Places of findings in a plan's text
export { placeFindings } from './plan/placeFindings.ts';
export { type Finding, type LonLat, type Result, type Severity, type Where, findingLine } from './finding.ts';
export type { Degrees, In, Kilograms, Latitude, Litres, Longitude, Metres, Seconds } from './units.ts';
