/**
 * What is checked before there is a layout: while files are read, courses measured and calibrated,
 * and waivers matched. Listed with the checks, so that a reviewer sees that they ran.
 */
import { COMMON_PRACTICE, type Rule } from './check.ts';

const noWaves: NonNullable<Rule['missing']> = ({ plan }) =>
  plan.races.some(({ waves }) => waves.length > 0) ? null : 'no race of the plan has waves';
const noResults: NonNullable<Rule['missing']> = ({ plan }) =>
  plan.races.some(({ finish, waves }) =>
    [finish, ...waves.map((wave) => wave.finish)].some((one) => one !== undefined && 'csv' in one),
  )
    ? null
    : 'no race takes its finish times from a file';
const noGradient: NonNullable<Rule['missing']> = ({ plan }) =>
  plan.races.some(({ gradient, waves }) => gradient && waves.length > 0)
    ? null
    : 'no race is reckoned with its gradients';
const noVehicles: NonNullable<Rule['missing']> = (layout) =>
  noWaves(layout) ?? (layout.plan.vehicles.length > 0 ? null : 'the plan has no vehicles');

const dayRule = (
  code: string,
  severity: Rule['severity'],
  title: string,
  missing: NonNullable<Rule['missing']> = noWaves,
): Rule => ({ code, severity, title, source: COMMON_PRACTICE, missing });

/** What race day says. */
const DAY_RULES: readonly Rule[] = [
  dayRule('race-without-waves', 'note', 'Every race says when it starts, and with how many'),
  dayRule('race-without-starters', 'note', 'Every race has starters'),
  dayRule('race-without-times', 'note', 'Every race has finish times'),
  dayRule('race-too-large', 'error', 'No race has over a million starters'),
  dayRule('race-endless', 'error', 'No race lasts over seven days'),
  dayRule('waves-overlap', 'note', 'A wave has crossed the start line before the next begins'),
  dayRule('results-missing', 'error', 'Past results that the plan names are there', noResults),
  dayRule('results-unread', 'error', 'Past results can be read', noResults),
  dayRule('results-column', 'error', 'Past results have the column that the plan names', noResults),
  dayRule('results-empty', 'error', 'Past results hold finish times', noResults),
  dayRule('results-left-out', 'note', 'Every row of past results holds a finish', noResults),
  dayRule('gradient-unknown', 'note', 'A race reckoned with its gradients has elevations', noGradient),
  dayRule(
    'gradient-too-steep',
    'warning',
    'Gradients are within those that the cost curve was measured on',
    noGradient,
  ),
  dayRule('sweep-impossible', 'warning', 'The sweep reaches the finish after it has left'),
  dayRule('heat-assumed', 'note', 'The plan says how hot the day is'),
  dayRule('heat-steps', 'warning', 'Heat steps rise'),
  dayRule('gels-short', 'warning', 'As many gels are ordered as are taken'),
  dayRule('pre-pour-room', 'warning', 'Tables hold the cups that should stand poured before the first runner'),
  dayRule('cups-run-out', 'warning', 'Poured cups never run out'),
  dayRule('station-no-arrivals', 'note', 'Somebody arrives at every station'),
  dayRule('vehicles-missing', 'note', 'Vehicles carry what the stations need'),
  dayRule('load-too-heavy', 'error', 'Every load fits a vehicle', noVehicles),
  dayRule('clock-missing', 'note', 'The clock says when the course opens and closes to vehicles', noVehicles),
  dayRule('drop-closed', 'error', 'No vehicle is on closed course', noVehicles),
  dayRule('drop-late', 'warning', 'Supplies are dropped before their crew is due', noVehicles),
  dayRule('drop-nowhere', 'error', 'Every station that takes supplies is passed by a course', noVehicles),
];

/** What is checked before there is a layout, in the order in which it is reported: of files, courses, waivers and race day. */
export const STAGE_RULES: readonly Rule[] = [
  {
    code: 'track-chosen',
    severity: 'note',
    title: 'The GPX file has one line, or the plan says which',
    source: COMMON_PRACTICE,
  },
  { code: 'gap-joined', severity: 'note', title: 'The segments of a track meet', source: COMMON_PRACTICE },
  { code: 'gap-skipped', severity: 'warning', title: 'No gap of over 50 m is skipped', source: COMMON_PRACTICE },
  {
    code: 'track-spike',
    severity: 'warning',
    title: 'No point leaves the course and returns',
    source: COMMON_PRACTICE,
  },
  { code: 'track-tangle', severity: 'warning', title: 'The recorder did not stand still', source: COMMON_PRACTICE },
  {
    code: 'track-jump',
    severity: 'warning',
    title: 'No step is far longer than those around it',
    source: COMMON_PRACTICE,
  },
  {
    code: 'track-sparse-bend',
    severity: 'note',
    title: 'Points on bends are at most 200 m apart',
    source: COMMON_PRACTICE,
  },
  { code: 'mark-factor', severity: 'warning', title: 'Marks and line agree within 3 %', source: COMMON_PRACTICE },
  { code: 'waiver-unmatched', severity: 'warning', title: 'Every waiver matches a finding', source: COMMON_PRACTICE },
  ...DAY_RULES,
];
