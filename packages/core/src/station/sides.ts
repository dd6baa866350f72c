/**
 * On which side each direction's runners have the tables. The lead's side is the declared one, or that of its own pass.
 * Another direction has its own pass's; the mirror of the lead's only where both ways share one line, as far as the lines
 * tell. Where the plan declares the side, the tables stand where the layout puts them from the lead's line, and the
 * other line lies where the two offsets of the pin say. What is not sure is `unclear`.
 */
import type { Course, Side } from '../course/course.ts';
import { sigmaOf } from '../course/passes.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { normalCdf } from '../geodesy/normal.ts';
import type { DeclaredSide, PlanStation, Practice } from '../plan/plan.ts';
import type { CourseTable } from './directions.ts';
import type { StationPass } from './station.ts';

/** Directions that differ by more than this, in degrees, run against each other. */
const AGAINST = 120;
/** By less than this, the same way. */
const ALONG = 60;
/** Two ways nearer than this, metres, are drawn as one line. */
export const ONE_LINE = 0.1;

/** Whether two azimuths in degrees are those of runners who come against each other. */
export const runsAgainst = (a: number, b: number): boolean => azimuthDifference(a, b) > AGAINST;

/** Whether a distance in metres from a limit tells, at the practice's confidence, on which side of it a place lies. */
export function isSure(distance: number, practice: Practice): boolean {
  const sigma = sigmaOf(practice);
  return sigma === 0 || normalCdf(Math.abs(distance) / sigma) >= practice.sideConfidence;
}

/** The same for the distance between the lines of two courses: recorded ones err by `courseR95` each, those drawn on purpose are taken as they are. */
export function linesTell(distance: number, one: Course, other: Course, practice: Practice): boolean {
  const r95 = (course: Course): number => (course.drawn === 'recorded' ? practice.courseR95 : 0);
  return isSure(distance, { ...practice, pinR95: r95(one), courseR95: r95(other) });
}

/** What tells where a station's tables stand. */
export interface SideGround {
  readonly station: PlanStation;
  readonly practice: Practice;
  readonly courses: CourseTable;
  readonly lead: StationPass;
  /** As the lead's runners see it. */
  readonly declared: DeclaredSide | undefined;
}

/** 1 where a pass runs the lead's way, −1 where it runs against it; `null` where the two cross. */
function wayOf(pass: StationPass, lead: StationPass): 1 | -1 | null {
  const turn = azimuthDifference(pass.azimuthDeg, lead.azimuthDeg);
  return turn > AGAINST ? -1 : turn < ALONG ? 1 : null;
}

/** How far left of the lead's line the other pass's line lies at the pin, metres. */
const lineAt = (pass: StationPass, lead: StationPass, way: 1 | -1): number => lead.offset - way * pass.offset;

/** Whether a pass runs on the line of the lead, either way: drawn as one, or recorded no farther apart than recorders err. */
export function onOneLine(pass: StationPass, { lead, courses, practice }: SideGround): boolean {
  const way = wayOf(pass, lead);
  if (way === null) return false;
  const apart = Math.abs(lineAt(pass, lead, way));
  const [one, other] = [courses.get(lead.course)!.course, courses.get(pass.course)!.course];
  return apart <= ONE_LINE || !linesTell(apart, one, other, practice);
}

const flipped = (side: Side): Side => (side === 'unclear' ? side : side === 'left' ? 'right' : 'left');

/** The side on which the lead's tables stand as another direction's runners see them. */
export function sideAcross(pass: StationPass, ground: SideGround): Side {
  const { lead, declared } = ground;
  const way = wayOf(pass, lead);
  const shared = onOneLine(pass, ground);
  // Where the declared side contradicts the pin, the tables do not stand where the pin is: its other sides tell nothing.
  const contradicted = declared !== undefined && lead.side !== 'unclear' && lead.side !== declared;
  const own = contradicted ? 'unclear' : pass.side;
  if (shared && own === 'unclear') return way === 1 ? (declared ?? lead.side) : flipped(declared ?? lead.side);
  if (shared || declared === undefined || way === null || lead.side === declared) return own;
  const placed = placedSide(pass, way, ground, declared);
  // The pin and the plan put the tables on different sides of this line: nobody knows.
  return own === 'unclear' || placed === own ? placed : placed === 'unclear' ? own : 'unclear';
}

/** The same where the plan alone tells where the tables stand: half the road's width and the setback from the lead's line, or the kerb's distance. */
function placedSide(pass: StationPass, way: 1 | -1, ground: SideGround, declared: DeclaredSide): Side {
  const { station, practice, lead } = ground;
  const off = station.width === undefined ? practice.kerb : station.width / 2 + practice.setback;
  const tables = declared === 'left' ? off : -off;
  const left = way * (tables - lineAt(pass, lead, way));
  if (left === 0 || !isSure(left, practice)) return 'unclear';
  return left > 0 ? 'left' : 'right';
}
