/** Stations that are called by their course distance ("2 km"): the name follows when they are moved, until somebody writes another. */
import { passesOf } from '@halfcup/core/geometry';
import { lengthIn, parseLength } from '@halfcup/core/units';
import type { OpenPlan } from '../store/store.ts';
import { leadOffsetLine, type Placement } from './placing.ts';

const AUTOMATIC = /^\d+(?:\.\d{1,3})? (km|mi)$/u;
/** Half of the last digit of a name with two decimals, in its own unit, and a centimetre. */
const ROUNDED = { km: 5.01, mi: 8.06 } as const;

/** The name of a station after it is put elsewhere; `null` where its name is not its distance. */
export function nameAfterMove({ analysis }: OpenPlan, id: string, placement: Placement): string | null {
  const station = analysis.stations.find((one) => one.id === id);
  const unit = AUTOMATIC.exec(station?.name ?? '')?.[1] as 'km' | 'mi' | undefined;
  if (station === undefined || unit === undefined) return null;
  const line = leadOffsetLine(station);
  const own = station.station.on ?? line;
  const called = parseLength(station.name);
  if (own === null || !called.ok || Math.abs(called.value - own.measure) > ROUNDED[unit]) return null;
  const course = analysis.courses.find((one) => one.course.id === own.course);
  const measures =
    'on' in placement
      ? [placement.on.measure]
      : course === undefined
        ? []
        : passesOf(course, placement.at, station.practice).map(({ measure }) => measure);
  const [to] = measures.toSorted((a, b) => Math.abs(a - own.measure) - Math.abs(b - own.measure));
  return to === undefined ? null : `${Number(lengthIn(to, unit).toFixed(2))} ${unit}`;
}
