/** The house's distances, tolerances and limits: of the plan, or a station's own. */
import type { Practice } from '@halfcup/core';
import type { JSX } from 'preact';
import { LengthField } from './LengthField.tsx';
import { NumberField } from './NumberField.tsx';
import { ruleField, type PracticeProps } from './rules.ts';

type Lengths = readonly (readonly [key: keyof Practice, label: string])[];

const LAID_OUT: Lengths = [
  ['signAhead', 'Sign ahead of the first table'],
  ['signTolerance', 'Sign may stand off by'],
  ['gelAhead', 'Gel ahead of the drinks'],
  ['tableGap', 'Gap between tables'],
  ['tableLength', 'Length of a table'],
  ['trashFrom', 'Trash from, past the tables'],
  ['trashTo', 'Trash to'],
  ['boxEvery', 'A box every'],
];
const ROAD: Lengths = [
  ['kerb', 'Kerb from the course'],
  ['setback', 'Tables back from the kerb'],
  ['clearWidth', 'Clear width for runners'],
  ['bendClear', 'Tables clear of bends by'],
];
const SURVEY: Lengths = [
  ['snapRadius', 'A course passes a pin within'],
  ['pinR95', 'Pins are good to (95 %)'],
  ['courseR95', 'The course is good to (95 %)'],
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
          ],
          true,
        )}
        <NumberField
          {...ruleField(props, ['practice', 'maxGrade'], 'Steepest grade at the tables')}
          fallback={props.fallback.maxGrade}
          unit="of 1"
        />
        <NumberField
          {...ruleField(props, ['practice', 'sideConfidence'], 'A side is known from')}
          fallback={props.fallback.sideConfidence}
          unit="of 1"
        />
        {lengths(SURVEY)}
      </details>
    </>
  );
}
