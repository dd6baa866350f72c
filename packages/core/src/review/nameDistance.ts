/** A station whose name says a distance ("Mile 12", "10 km", "km 30", "PK 15 Harbour") that no race has where it stands. */
import { courseLength } from '../course/course.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { metres } from '../units.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

const NUMBER = String.raw`(\d{1,3}(?:[.,]\d{1,3})?)`;
const KILOMETRE = 'kilomet(?:re|er)s?|kilómetros?|kms?|k';
const MILE = 'miles?|millas?|mi';
const UNIT = `(${KILOMETRE}|${MILE})`;
/** What may follow, so that "10 Mile Road" is a road. */
const END = String.raw`(?=\s*(?:$|[,;:()–—-])|\s+(?:aid|water|station|table|tables|drinks?|stop|mark|marker|post|puesto|agua|avituallamiento)\b)`;
const BEFORE = String.raw`(?:^|[\s(,;:–—-])`;
/** Before its number a unit is a distance whatever follows but a kind of road or house: "Km 15 Harbour", not "Mile 12 Road". PK and KP: kilometre points. */
const FIRST = `(${KILOMETRE}|pk|kp|${MILE})`;
const NO_ROAD = String.raw`(?![\d.,]*\d)(?!\s+(?:road|street|lane|avenue|drive|way|creek|bridge|house|hill|inn|farm|race|run|course|start|finish|calle|camino|carretera|casa|salida|meta)\b)(?=$|[\s,;:()–—-])`;
const UNIT_FIRST = new RegExp(`${BEFORE}${FIRST}\\.?\\s*${NUMBER}${NO_ROAD}`, 'iu');
const NUMBER_FIRST = new RegExp(`${BEFORE}${NUMBER}\\s*${UNIT}${END}`, 'iu');
const IS_MILE = new RegExp(`^(?:${MILE})$`, 'iu');

/** Names round: so much of the unit is no slip. */
const WITHIN = 0.75;
/** A name may be that of the race that is served, "10 km": as a share of its length. */
const RACE_NAME = 0.03;

interface Said {
  readonly measure: number;
  /** Of its unit, metres. */
  readonly unit: number;
}

/** The distance that a name says, if it says one. */
export function distanceIn(name: string): Said | null {
  const unitFirst = UNIT_FIRST.exec(name);
  const [unit, number] =
    unitFirst === null ? [NUMBER_FIRST.exec(name)?.[2], NUMBER_FIRST.exec(name)?.[1]] : unitFirst.slice(1);
  if (unit === undefined || number === undefined) return null;
  const one = IS_MILE.test(unit) ? metres(1, 'mi') : 1000;
  return { measure: Number(number.replace(',', '.')) * one, unit: one };
}

function strayAt(station: StationLayout, { courses }: Layout): Case<'name-distance'>[] {
  const said = distanceIn(station.name);
  if (said === null || station.passes.length === 0) return [];
  const isRace = courses.some(
    ({ course }) => Math.abs(courseLength(course) - said.measure) <= RACE_NAME * said.measure,
  );
  if (isRace) return [];
  const off = ({ measure }: { readonly measure: number }): number => Math.abs(measure - said.measure);
  const nearest = station.passes.reduce((best, pass) => (off(pass) < off(best) ? pass : best));
  const limit = WITHIN * said.unit;
  if (off(nearest) <= limit) return [];
  return [
    {
      params: { said: said.measure, race: nearest.race, measure: nearest.measure },
      where: { ...atStation(station, 'name'), race: nearest.race, measure: nearest.measure },
      measured: off(nearest),
      limit,
      unit: 'm',
    },
  ];
}

export const nameDistance: Check = check(
  { code: 'name-distance', severity: 'warning', source: COMMON_PRACTICE },
  (layout) => layout.stations.flatMap((station) => strayAt(station, layout)),
);
