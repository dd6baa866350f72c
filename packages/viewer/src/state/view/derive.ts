/** What the screen shows, computed from the store and from core; each result is kept with the record it came from. */
import {
  type Analysis,
  type Finding,
  type LaidDirection,
  type RaceSpacing,
  type Severity,
  type StationLayout,
} from '@halfcup/core';
import { type ItemKind, formOf } from '@halfcup/core/plan';
import { type Course, type Side } from '@halfcup/core/stages';
import { courseLength, elevationAt, pointAt } from '@halfcup/core/geometry';
import type { OpenPlan } from '../store/store.ts';

/** Keeps the result of `compute` with its argument for as long as that lives. */
export function keep<K extends object, V>(compute: (key: K) => V): (key: K) => V {
  const results = new WeakMap<K, V>();
  return (key) => {
    const known = results.get(key);
    if (known !== undefined) return known;
    const value = compute(key);
    results.set(key, value);
    return value;
  };
}

/** A course at even steps of its measure, for drawing, for pointing at, and for finding where it comes back. */
export interface Samples {
  readonly measure: Float64Array;
  readonly lon: Float64Array;
  readonly lat: Float64Array;
  readonly azimuthDeg: Float64Array;
  /** `null` where the course has no elevation. */
  readonly elevation: Float64Array | null;
}

/** Every 10 m, or less densely so that there are at most 6,000 samples; skipped gaps have none. */
export const samplesOf: (course: Course) => Samples = keep((course) => {
  const length = courseLength(course);
  const count = Math.max(2, Math.min(6000, Math.ceil(length / 10) + 1));
  const rows: number[][] = [];
  for (let index = 0; index < count; index++) {
    const measure = (length * index) / (count - 1);
    const point = pointAt(course, measure);
    if (point !== null)
      rows.push([measure, point.at[0], point.at[1], point.azimuthDeg, elevationAt(course, measure) ?? Number.NaN]);
  }
  const column = (at: number): Float64Array => Float64Array.from(rows, (row) => row[at] ?? 0);
  const elevation = column(4);
  return {
    measure: column(0),
    lon: column(1),
    lat: column(2),
    azimuthDeg: column(3),
    elevation: elevation.length > 1 && elevation.every(Number.isFinite) ? elevation : null,
  };
});

/** The courses of a plan, each the same record as long as the analysis lives. */
export const coursesOf: (analysis: Analysis) => readonly Course[] = keep((analysis) =>
  analysis.courses.map((one) => one.course),
);

export const courseOf = (open: OpenPlan | null, id: string | null | undefined): Course | undefined =>
  open === null ? undefined : coursesOf(open.analysis).find((course) => course.id === id);

export interface Counts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
}

export const isOpen = (finding: Finding): boolean => finding.waived === undefined;

export const countsOf = (findings: readonly Finding[]): Counts => {
  const of = (severity: Severity): number =>
    findings.filter((finding) => finding.severity === severity && isOpen(finding)).length;
  return { error: of('error'), warning: of('warning'), note: of('note') };
};

/** Findings that somebody has waived: errors, and all others. */
export interface Waived {
  readonly errors: number;
  readonly others: number;
}

export const waivedOf = (findings: readonly Finding[]): Waived => {
  const waived = findings.filter((finding) => !isOpen(finding));
  const errors = waived.filter(({ severity }) => severity === 'error').length;
  return { errors, others: waived.length - errors };
};

/** Findings by station id. */
export const findingsByStation: (open: OpenPlan) => ReadonlyMap<string, readonly Finding[]> = keep((open) => {
  const map = new Map<string, Finding[]>();
  for (const finding of open.findings) {
    const { station } = finding.where;
    if (station === undefined) continue;
    const own = map.get(station);
    if (own === undefined) map.set(station, [finding]);
    else own.push(finding);
  }
  return map;
});

export const leadOf = (station: StationLayout): LaidDirection | undefined =>
  station.directions.find((direction) => direction.lead) ?? station.directions[0];

export const isTable = (kind: ItemKind): boolean => formOf(kind) === 'table';

/** From the sign to the first thing that it announces, metres: along the course, and by wheel along the kerb. */
export function signDistance(
  direction: LaidDirection,
): { readonly along: number; readonly wheel: number | null } | null {
  const sign = direction.items.find((item) => item.kind === 'sign');
  const served = direction.items
    .filter((item) => isTable(item.kind) || formOf(item.kind) === 'line')
    .toSorted((a, b) => a.from - b.from);
  const [first] = served;
  if (sign === undefined || first === undefined) return null;
  return {
    along: first.from - sign.to,
    wheel: sign.wheel === null || first.wheel === null ? null : first.wheel[0] - sign.wheel[1],
  };
}

export interface RowLeg {
  readonly length: number;
  /** The worst open finding about this very leg. */
  readonly flag: Severity | null;
}

/** The legs of one race that end at a station, one for each served pass. */
function legsTo(spacing: RaceSpacing | undefined, id: string, findings: readonly Finding[]): RowLeg[] {
  const about = findings.filter((finding) => aboutLeg(finding) && finding.where.race === spacing?.race);
  const legs = spacing?.legs.filter((leg) => leg.to === id) ?? [];
  return legs.map((leg) => ({
    length: leg.length,
    flag: worstOf(about.filter((finding) => finding.where.measure === leg.end)),
  }));
}

export interface StationRow {
  readonly id: string;
  /** As drawn in the rings of map and strip, from 1. */
  readonly number: number;
  readonly name: string;
  /** Course distance of the lead direction's pass; `null` where no course passes. */
  readonly measure: number | null;
  readonly side: Side;
  readonly declared: boolean;
  /** Of the geometry, for the lead direction's first pass. */
  readonly confidence: number | null;
  /** In the order of the plan's races: legs that end here, one for each served pass. */
  readonly legs: readonly (readonly RowLeg[])[];
  readonly signAlong: number | null;
  readonly signWheel: number | null;
  readonly counts: Counts;
  readonly waived: Waived;
  readonly worst: Severity | null;
  /** The worst open finding about the sign. */
  readonly sign: Severity | null;
}

/** The gravest open severity. */
export const worstOf = (findings: readonly Finding[]): Severity | null => {
  const counts = countsOf(findings);
  return counts.error > 0 ? 'error' : counts.warning > 0 ? 'warning' : counts.note > 0 ? 'note' : null;
};

export const aboutSign = (finding: Finding): boolean =>
  finding.where.item === 'sign' || finding.code.startsWith('sign');
export const aboutLeg = (finding: Finding): boolean => finding.code.startsWith('leg-');

export const numberOf = ({ number, index }: StationLayout): number => number ?? index + 1;

function rowOf(analysis: Analysis, station: StationLayout, findings: readonly Finding[]): StationRow {
  const lead = leadOf(station);
  const pass = lead === undefined ? undefined : station.passes[lead.passes[0] ?? -1];
  const sign = lead === undefined ? null : signDistance(lead);
  return {
    id: station.id,
    number: numberOf(station),
    name: station.name,
    measure: lead?.measure ?? null,
    side: lead?.side ?? 'unclear',
    declared: station.station.side !== undefined,
    confidence: pass?.confidence ?? null,
    legs: analysis.plan.races.map((race) =>
      legsTo(
        analysis.spacing.find((one) => one.race === race.id),
        station.id,
        findings,
      ),
    ),
    signAlong: sign?.along ?? null,
    signWheel: sign?.wheel ?? null,
    counts: countsOf(findings),
    waived: waivedOf(findings),
    worst: worstOf(findings),
    sign: worstOf(findings.filter(aboutSign)),
  };
}

/** The table of stations, by number. */
export const stationRows: (open: OpenPlan) => readonly StationRow[] = keep((open) => {
  const findings = findingsByStation(open);
  return open.analysis.stations
    .map((station) => rowOf(open.analysis, station, findings.get(station.id) ?? []))
    .toSorted((a, b) => a.number - b.number);
});

/** The place on a course nearest to a point, and how far away it is, metres; for pointing, to a sample's step. */
export function nearestSample(
  samples: Samples,
  lon: number,
  lat: number,
): { readonly measure: number; readonly distance: number } {
  const east = 111_320 * Math.cos((lat * Math.PI) / 180);
  let best = Number.POSITIVE_INFINITY;
  let measure = 0;
  for (let index = 0; index < samples.measure.length; index++) {
    const dx = ((samples.lon[index] ?? 0) - lon) * east;
    const dy = ((samples.lat[index] ?? 0) - lat) * 110_600;
    const square = dx * dx + dy * dy;
    if (square < best) {
      best = square;
      measure = samples.measure[index] ?? 0;
    }
  }
  return { measure, distance: Math.sqrt(best) };
}
