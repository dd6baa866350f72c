/**
 * All checks, in the order in which they are reported. To add one: a file with its test beside it,
 * and a line here.
 */
import type { Check } from './check.ts';
import { accessMissing } from './accessMissing.ts';
import { bendNearTables } from './bendNearTables.ts';
import { crossesFlow, servedBothWays } from './bothWays.ts';
import { clearWidth, respondersWidth } from './clearWidth.ts';
import { coursesDisagree } from './coursesDisagree.ts';
import { dropSide } from './dropSide.ts';
import { gelWithoutWater } from './gelWithoutWater.ts';
import { descentWithWheels, gradeAtTables } from './grades.ts';
import { itemAcross } from './itemAcross.ts';
import { itemInZone } from './itemInZone.ts';
import { itemOffCourse } from './itemOffCourse.ts';
import { itemOutside } from './itemOutside.ts';
import { itemOutsideAllowed } from './itemOutsideAllowed.ts';
import { itemsOverlap } from './itemsOverlap.ts';
import { leadFar } from './leadFar.ts';
import { legLong, legShort } from './legs.ts';
import { lengthDiffers } from './lengthDiffers.ts';
import { medicalWithoutAccess } from './medicalAccess.ts';
import { passUnknown } from './passUnknown.ts';
import { raceUnserved } from './raceUnserved.ts';
import { seenNotServed } from './seenNotServed.ts';
import { sideChange } from './sideChange.ts';
import { sideContradicted } from './sideContradicted.ts';
import { sideUnclear } from './sideUnclear.ts';
import { signDistance } from './signDistance.ts';
import { signMissed } from './signMissed.ts';
import { stationOffCourse } from './stationOffCourse.ts';
import { stationUnserved } from './stationUnserved.ts';
import { tablesFarOff } from './tablesFarOff.ts';
import { tablesHidden } from './tablesHidden.ts';
import { tablesMismatch } from './tablesMismatch.ts';
import { trashBlocksMedical } from './trashBlocksMedical.ts';
import { twoWayRoad } from './twoWayRoad.ts';
import { wheelFolds } from './wheelFolds.ts';

/** Every check of a layout, in the order in which they are reported. What is checked before there is a layout: `STAGE_RULES`. */
export const CHECKS: readonly Check[] = [
  lengthDiffers,
  stationOffCourse,
  stationUnserved,
  passUnknown,
  leadFar,
  sideUnclear,
  sideContradicted,
  itemOutside,
  itemOffCourse,
  itemAcross,
  tablesMismatch,
  tablesFarOff,
  itemInZone,
  itemOutsideAllowed,
  itemsOverlap,
  signDistance,
  signMissed,
  twoWayRoad,
  servedBothWays,
  crossesFlow,
  seenNotServed,
  coursesDisagree,
  tablesHidden,
  wheelFolds,
  bendNearTables,
  gradeAtTables,
  descentWithWheels,
  clearWidth,
  respondersWidth,
  legLong,
  legShort,
  sideChange,
  raceUnserved,
  gelWithoutWater,
  accessMissing,
  dropSide,
  medicalWithoutAccess,
  trashBlocksMedical,
];
