/** Where a station goes when it is moved, in the form in which its plan places it. Pure. */
import type { LonLat, StationLayout, Analysis } from '@halfcup/core';
import type { PlanStation } from '@halfcup/core/plan';
import { courseLength, passesOf, pointAt, startMeasure, type IndexedCourse, type Pass } from '@halfcup/core/geometry';
import { leadOf } from '../view/derive.ts';

type OnCourse = NonNullable<PlanStation['on']>;
export type Placement = { readonly at: LonLat } | { readonly on: OnCourse };

/** A centimetre on the ground, as coordinates and as a length. */
const degrees = (value: number): number => Number(value.toFixed(7));
const centimetres = (value: number): number => Number(value.toFixed(2));

const courseOf = (analysis: Analysis, id: string): IndexedCourse | undefined =>
  analysis.courses.find(({ course }) => course.id === id);

const nearestTo = (passes: readonly Pass[], measure: number): Pass | undefined =>
  passes.toSorted((a, b) => Math.abs(a.measure - measure) - Math.abs(b.measure - measure))[0];

/** The side of the line on which a place lies, however near; on the line itself the one given. */
export const sideOfLine = (offset: number, onIt: 'left' | 'right'): 'left' | 'right' =>
  Math.abs(offset) < 0.01 ? onIt : offset < 0 ? 'right' : 'left';

function onFrom(on: OnCourse, pass: Pass): OnCourse {
  return {
    course: on.course,
    measure: centimetres(pass.measure),
    side: sideOfLine(pass.offset, on.side),
    offset: centimetres(Math.abs(pass.offset)),
  };
}

/**
 * Anywhere on the ground. A station that its plan gives by course and measure stays so, at the pass nearest to where it was,
 * as long as its course passes there; beyond, it is given by coordinates.
 */
export function freePlacement(analysis: Analysis, station: StationLayout, [lon, lat]: LonLat): Placement {
  const at: LonLat = [degrees(lon), degrees(lat)];
  const { on } = station.station;
  const course = on === undefined ? undefined : courseOf(analysis, on.course);
  const pass =
    on === undefined || course === undefined
      ? undefined
      : nearestTo(passesOf(course, at, station.practice), on.measure);
  return on === undefined || pass === undefined ? { at } : { on: onFrom(on, pass) };
}

/** The pass of a station by a course that is nearest to a measure. */
export const passNear = (
  station: StationLayout,
  course: string,
  measure: number,
): StationLayout['passes'][number] | undefined =>
  station.passes
    .filter((pass) => pass.course === course)
    .toSorted((a, b) => Math.abs(a.measure - measure) - Math.abs(b.measure - measure))[0];

/** The line beside a course along which a station moves: the offset of one of its passes. */
export interface OffsetLine {
  readonly course: string;
  /** Metres, left positive. */
  readonly offset: number;
}

/** The line through a station along a course, by the pass nearest to a measure; `null` where that course does not pass it. */
export function offsetLineOf(station: StationLayout, course: string, measure: number): OffsetLine | null {
  const pass = passNear(station, course, measure);
  return pass === undefined ? null : { course, offset: pass.offset };
}

/** The line through a station along the course of its lead direction, and where on it the station stands. */
export function leadOffsetLine(station: StationLayout): (OffsetLine & { readonly measure: number }) | null {
  const lead = leadOf(station);
  const pass = lead === undefined ? undefined : station.passes[lead.passes[0] ?? -1];
  return lead === undefined || pass === undefined
    ? null
    : { course: lead.course, offset: pass.offset, measure: pass.measure };
}

/** Along a course with the offset of a line kept (or crossed over to `side`), within the course's ends; `null` in a skipped gap. */
export function alongPlacement(
  analysis: Analysis,
  station: StationLayout,
  line: OffsetLine,
  measure: number,
  side?: 'left' | 'right',
): Placement | null {
  const indexed = courseOf(analysis, line.course);
  if (indexed === undefined) return null;
  const { course } = indexed;
  const to = Math.min(Math.max(measure, startMeasure(course)), courseLength(course));
  const own = line.offset < 0 ? 'right' : 'left';
  const offset = side === undefined || side === own ? line.offset : -line.offset;
  const { on } = station.station;
  if (on?.course === line.course && Math.abs(Math.abs(line.offset) - on.offset) < 0.5) {
    return pointAt(course, to) === null
      ? null
      : { on: { ...on, measure: centimetres(to), side: side ?? (Math.abs(line.offset) < 0.01 ? on.side : own) } };
  }
  const ground = pointAt(course, to, offset);
  return ground === null ? null : freePlacement(analysis, station, ground.at);
}

/** The station of a plan at another place: the one form of placing replaces the other. */
export function placed(station: PlanStation, placement: Placement): PlanStation {
  const { at: _at, on: _on, ...rest } = station;
  return { ...rest, ...placement };
}

/** Where a station of a plan stands, in the form in which the plan has it. */
export const placementOf = ({ at, on }: PlanStation): Placement => (on === undefined ? { at: at! } : { on });
