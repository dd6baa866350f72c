/**
 * What is checked before there is a layout: while files are read, courses measured and calibrated,
 * and waivers matched. Listed with the checks, so that a reviewer sees that they ran.
 */
import { DRINKS_SOURCE } from '../raceday/dayFindings.ts';
import type { CheckCode } from '../text/params/checks.ts';
import { WEATHER_SOURCE } from '../plan/weather.ts';
import { COMMON_PRACTICE, type Rule, type RuleOf, noWaves, ruled } from './check.ts';

type Missing = NonNullable<RuleOf<CheckCode>['missing']>;

const noResults: Missing = ({ plan }) =>
  plan.races.some(({ finish, waves }) =>
    [finish, ...waves.map((wave) => wave.finish)].some((one) => one !== undefined && 'csv' in one),
  )
    ? null
    : 'no-results';
const noGradients: Missing = ({ plan }) =>
  plan.races.some(({ gradient, waves }) => gradient && waves.length > 0) ? null : 'no-gradients';
const noCutoff: Missing = (layout) =>
  noWaves(layout) ?? (layout.plan.races.some(({ cutoff }) => cutoff !== undefined) ? null : 'no-cutoff');
const noVehicles: Missing = (layout) => noWaves(layout) ?? (layout.plan.vehicles.length > 0 ? null : 'no-vehicles');

const noWeather: Missing = (layout) =>
  noWaves(layout) ?? ((layout.plan.weather ?? []).length > 0 ? null : 'no-weather');

const stageRule = (code: CheckCode, severity: Rule['severity']): Rule =>
  ruled({ code, severity, source: COMMON_PRACTICE });
const dayRule = (code: CheckCode, severity: Rule['severity'], missing: Missing = noWaves): Rule =>
  ruled({ code, severity, source: COMMON_PRACTICE, missing });

/** What is checked before there is a layout, in the order in which it is reported: of files, courses, waivers and race day. */
export const STAGE_RULES: readonly Rule[] = [
  stageRule('track-chosen', 'note'),
  stageRule('gap-joined', 'note'),
  stageRule('gap-skipped', 'warning'),
  stageRule('track-spike', 'warning'),
  stageRule('track-tangle', 'warning'),
  stageRule('track-jump', 'warning'),
  stageRule('track-sparse-bend', 'note'),
  stageRule('mark-factor', 'warning'),
  stageRule('waiver-unmatched', 'warning'),
  stageRule('waiver-refused', 'warning'),
  stageRule('waiver-outgrown', 'warning'),
  stageRule('waiver-unbound', 'note'),
  dayRule('race-without-starters', 'warning'),
  dayRule('race-without-times', 'warning'),
  dayRule('race-too-large', 'error'),
  dayRule('race-endless', 'error'),
  dayRule('waves-overlap', 'note'),
  dayRule('results-missing', 'error', noResults),
  dayRule('results-unread', 'error', noResults),
  dayRule('results-column', 'error', noResults),
  dayRule('results-empty', 'error', noResults),
  dayRule('results-left-out', 'note', noResults),
  dayRule('splits-left-out', 'note', noResults),
  dayRule('gradient-unknown', 'note', noGradients),
  dayRule('gradient-too-steep', 'warning', noGradients),
  dayRule('cutoff-early', 'error', noCutoff),
  dayRule('sweep-impossible', 'error'),
  dayRule('heat-assumed', 'note'),
  dayRule('heat-steps', 'warning'),
  ruled({ code: 'weather-level', severity: 'note', source: WEATHER_SOURCE, missing: noWeather }),
  dayRule('weather-wind', 'note', noWeather),
  dayRule('gels-short', 'warning'),
  dayRule('pre-pour-room', 'warning'),
  dayRule('cups-run-out', 'warning'),
  dayRule('tables-room', 'note'),
  dayRule('crew-many', 'warning'),
  dayRule('pour-late', 'warning'),
  ruled({ code: 'drinks-few', severity: 'note', source: DRINKS_SOURCE, missing: noWaves }),
  dayRule('rule-unused', 'note'),
  dayRule('station-no-arrivals', 'note'),
  dayRule('vehicles-missing', 'note'),
  dayRule('vehicle-doubtful', 'warning', noVehicles),
  dayRule('load-too-heavy', 'error', noVehicles),
  dayRule('clock-missing', 'note', noVehicles),
  dayRule('drop-closed', 'error', noVehicles),
  dayRule('drop-late', 'warning', noVehicles),
  dayRule('drop-nowhere', 'error', noVehicles),
];
