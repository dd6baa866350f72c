/**
 * What is checked before there is a layout: while files are read, courses measured and calibrated,
 * and waivers matched. Listed with the checks, so that a reviewer sees that they ran.
 */
import { COMMON_PRACTICE, type Rule } from './check.ts';

export const STAGE_RULES: readonly Rule[] = [
  { code: 'track-chosen', severity: 'note', title: 'The GPX file has one line, or the plan says which', source: COMMON_PRACTICE },
  { code: 'gap-joined', severity: 'note', title: 'The segments of a track meet', source: COMMON_PRACTICE },
  { code: 'gap-skipped', severity: 'warning', title: 'No gap of over 50 m is skipped', source: COMMON_PRACTICE },
  { code: 'track-spike', severity: 'warning', title: 'No point leaves the course and returns', source: COMMON_PRACTICE },
  { code: 'track-tangle', severity: 'warning', title: 'The recorder did not stand still', source: COMMON_PRACTICE },
  { code: 'track-jump', severity: 'warning', title: 'No step is far longer than those around it', source: COMMON_PRACTICE },
  { code: 'track-sparse-bend', severity: 'note', title: 'Points on bends are at most 200 m apart', source: COMMON_PRACTICE },
  { code: 'mark-factor', severity: 'warning', title: 'Marks and line agree within 3 %', source: COMMON_PRACTICE },
  { code: 'waiver-unmatched', severity: 'warning', title: 'Every waiver matches a finding', source: COMMON_PRACTICE },
];
