/** The practice: distances, tolerances and limits, of the plan or a station's own. */
import type { Practice } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { LengthField } from './LengthField.tsx';
import { NumberField } from './NumberField.tsx';
import { ruleField, type PracticeProps } from './rules.ts';

type Lengths = readonly (readonly [key: keyof Practice, label: string])[];

const LAID_OUT: Lengths = [
  ['signAhead', 'Sign before the first table'],
  ['signTolerance', 'Sign tolerance'],
  ['gelAhead', 'Gel before the drinks'],
  ['tableGap', 'Gap between tables'],
  ['tableLength', 'Table length'],
  ['trashFrom', 'Trash begins, past the tables'],
  ['trashTo', 'Trash ends, past the tables'],
  ['boxEvery', 'One box every, without race day'],
  ['tablesRoom', 'Room for the tables'],
];
const ROAD: Lengths = [
  ['kerb', 'Kerb to course line'],
  ['setback', 'Tables set back from the kerb'],
  ['clearWidth', 'Clear width for runners'],
  ['bendClear', 'Tables clear of bends by'],
];
const SURVEY: Lengths = [
  ['snapRadius', 'Course counts as passing within'],
  ['pinR95', 'Pin accuracy (95 %)'],
  ['courseR95', 'Course accuracy (95 %)'],
  ['placedWithin', 'As built, within the plan by'],
];

export function PracticeFields(props: PracticeProps): JSX.Element {
  const lengths = (keys: Lengths, long = false): JSX.Element[] =>
    keys.map(([key, label]) => (
      <LengthField
        key={key}
        {...ruleField(props, ['practice', key], label)}
        fallback={props.fallback[key]}
        long={long}
      />
    ));
  return (
    <>
      {lengths(LAID_OUT)}
      {lengths(ROAD)}
      <details class="entry-more">
        <summary>Limits and accuracy</summary>
        {lengths(
          [
            ['maxSpacing', 'Longest leg'],
            ['minSpacing', 'Shortest leg'],
            ['firstAfter', 'First station, past the start'],
            ['lastBefore', 'Last station, before the finish'],
          ],
          true,
        )}
        <NumberField
          {...ruleField(props, ['practice', 'maxGrade'], 'Steepest grade at the tables')}
          fallback={props.fallback.maxGrade}
          unit="(0–1)"
        />
        <NumberField
          {...ruleField(props, ['practice', 'sideConfidence'], 'Side is certain from')}
          fallback={props.fallback.sideConfidence}
          unit="(0–1)"
        />
        {lengths(SURVEY)}
      </details>
    </>
  );
}
