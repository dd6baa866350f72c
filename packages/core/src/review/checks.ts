/**
 * All checks, in the order in which they are reported. To add one: a file with its test beside it,
 * and a line here.
 */
import type { Check } from './check.ts';
import { fireStationBlocked } from './fireStationBlocked.ts';
import { groundMissing, groundSilent, mapOld } from './mapItself.ts';
import { hospitalBlocked } from './hospitalBlocked.ts';
import { hydrantBlocked } from './hydrantBlocked.ts';
import { itemAtStop } from './itemAtStop.ts';
import { itemInMouth } from './itemInMouth.ts';
import { itemInTunnel } from './itemInTunnel.ts';
import { itemOnBridge } from './itemOnBridge.ts';
import { itemOnCrossing } from './itemOnCrossing.ts';
import { itemOnLevelCrossing } from './itemOnLevelCrossing.ts';
import { itemOnSteps } from './itemOnSteps.ts';
import { narrowByMap, widthFromMap } from './widthByMap.ts';
import { gateOnCourse, stepsWithWheels } from './onCourse.ts';
import { offMap } from './offMap.ts';
import { roughSurface } from './roughSurface.ts';
import { signUnseen, tablesUnseen } from './unseen.ts';
import { accessMissing } from './accessMissing.ts';
import { bendNearTables } from './bendNearTables.ts';
import { crossesFlow, servedBothWays } from './bothWays.ts';
import { boxInBend, boxOnLeg } from './boxPlaces.ts';
import { boxDistance, boxesFew, boxesMissing } from './boxes.ts';
import { boxesTight } from './boxesTight.ts';
import { clearWidth, respondersWidth } from './clearWidth.ts';
import { clockBeyond } from './clockBeyond.ts';
import { clockOrder } from './clockOrder.ts';
import { clockShort } from './clockShort.ts';
import { closesLate } from './closesLate.ts';
import { coursesDisagree } from './coursesDisagree.ts';
import { crewLate } from './crewLate.ts';
import { crowdedRoad } from './crowdedRoad.ts';
import { cutoffStopsMany } from './cutoffStopsMany.ts';
import { dropFar } from './dropFar.ts';
import { dropSide } from './dropSide.ts';
import { flowsShareWidth } from './flowsShareWidth.ts';
import { forkInStretch } from './forkInStretch.ts';
import { farFromCourses } from './farFromCourses.ts';
import { gelWithoutWater } from './gelWithoutWater.ts';
import { afterDescent, descentWithWheels, gradeAtTables } from './grades.ts';
import { heatDoubtful } from './heatDoubtful.ts';
import { itemAcross } from './itemAcross.ts';
import { itemInZone } from './itemInZone.ts';
import { itemOffCourse } from './itemOffCourse.ts';
import { itemOrder } from './itemOrder.ts';
import { itemOutside } from './itemOutside.ts';
import { itemOutsideAllowed } from './itemOutsideAllowed.ts';
import { itemsOnTop } from './itemsOnTop.ts';
import { itemsOverlap } from './itemsOverlap.ts';
import { leadFar } from './leadFar.ts';
import { legCrosses } from './legCrosses.ts';
import { legLong, legShort } from './legs.ts';
import { lengthDiffers } from './lengthDiffers.ts';
import { medicalWithoutAccess } from './medicalAccess.ts';
import { medicalWayBlocked } from './medicalWayBlocked.ts';
import { nearFinish, nearStart } from './nearEnds.ts';
import { nameDistance } from './nameDistance.ts';
import { noCaptain } from './noCaptain.ts';
import { noContacts } from './noContacts.ts';
import { noDate } from './noDate.ts';
import { noElevations } from './noElevations.ts';
import { noEntrants } from './noEntrants.ts';
import { noMedical } from './noMedical.ts';
import { noWater } from './noWater.ts';
import { noWidths } from './noWidths.ts';
import { passUnknown } from './passUnknown.ts';
import { passersNotServed } from './passersNotServed.ts';
import { pointBlocked } from './pointBlocked.ts';
import { pointsElsewhere } from './pointsElsewhere.ts';
import { raceUnserved } from './raceUnserved.ts';
import { reopensEarly } from './reopensEarly.ts';
import { rosterShort } from './rosterShort.ts';
import { ruleLoose } from './ruleLoose.ts';
import { sameName } from './sameName.ts';
import { seenNotServed } from './seenNotServed.ts';
import { sharedContact } from './sharedContact.ts';
import { showLow } from './showLow.ts';
import { sideChange } from './sideChange.ts';
import { sideContradicted } from './sideContradicted.ts';
import { sideUnclear } from './sideUnclear.ts';
import { signDistance } from './signDistance.ts';
import { signMissed } from './signMissed.ts';
import { signHardToRead, signInRoad } from './signPlace.ts';
import { stationOffCourse } from './stationOffCourse.ts';
import { stationUnserved } from './stationUnserved.ts';
import { stationsFace } from './stationsFace.ts';
import { slowWaveFirst } from './slowWaveFirst.ts';
import { speedImpossible } from './speedImpossible.ts';
import { suppliesShort } from './suppliesShort.ts';
import { tablesFarOff } from './tablesFarOff.ts';
import { tablesHidden } from './tablesHidden.ts';
import { tablesMany } from './tablesMany.ts';
import { tablesMismatch } from './tablesMismatch.ts';
import { trashBlocksMedical } from './trashBlocksMedical.ts';
import { twoWayRoad } from './twoWayRoad.ts';
import { walkedDate } from './walkedDate.ts';
import { wheelFolds } from './wheelFolds.ts';
import { zoneLarge } from './zoneLarge.ts';

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
  itemOrder,
  itemsOnTop,
  boxesMissing,
  boxDistance,
  boxesFew,
  boxesTight,
  boxInBend,
  boxOnLeg,
  signDistance,
  signInRoad,
  signHardToRead,
  signMissed,
  twoWayRoad,
  servedBothWays,
  crossesFlow,
  seenNotServed,
  passersNotServed,
  legCrosses,
  forkInStretch,
  flowsShareWidth,
  stationsFace,
  coursesDisagree,
  signUnseen,
  tablesUnseen,
  tablesHidden,
  wheelFolds,
  bendNearTables,
  gradeAtTables,
  afterDescent,
  descentWithWheels,
  clearWidth,
  respondersWidth,
  offMap,
  itemInMouth,
  itemOnBridge,
  itemInTunnel,
  itemOnSteps,
  itemOnLevelCrossing,
  itemAtStop,
  itemOnCrossing,
  hydrantBlocked,
  fireStationBlocked,
  hospitalBlocked,
  gateOnCourse,
  stepsWithWheels,
  roughSurface,
  narrowByMap,
  legLong,
  legShort,
  nearStart,
  nearFinish,
  sideChange,
  raceUnserved,
  gelWithoutWater,
  accessMissing,
  dropSide,
  medicalWithoutAccess,
  trashBlocksMedical,
  medicalWayBlocked,
  pointBlocked,
  clockOrder,
  clockBeyond,
  clockShort,
  closesLate,
  reopensEarly,
  crewLate,
  cutoffStopsMany,
  slowWaveFirst,
  speedImpossible,
  crowdedRoad,
  noWater,
  suppliesShort,
  tablesMany,
  heatDoubtful,
  dropFar,
  sameName,
  nameDistance,
  farFromCourses,
  zoneLarge,
  pointsElsewhere,
  noEntrants,
  showLow,
  noDate,
  walkedDate,
  noMedical,
  noWidths,
  noElevations,
  noContacts,
  noCaptain,
  sharedContact,
  rosterShort,
  widthFromMap,
  groundMissing,
  mapOld,
  groundSilent,
  ruleLoose,
];
