/** How many people it takes: rules of the plan, or a station's own. */
import type { JSX } from 'preact';
import { DurationField } from './DurationField.tsx';
import { LengthField } from './LengthField.tsx';
import { NumberField } from './NumberField.tsx';
import { ruleField, type CrewProps } from './rules.ts';

const NUMBERS = [
  ['minimum', 'Minimum crew', 'people'],
  ['pourers', 'Pourers', 'people'],
  ['pourRate', 'Each pourer pours', 'cups/min'],
  ['handRate', 'Each person hands out', 'cups/min'],
  ['fromTables', 'Taken from the tables', '(0–1)'],
  ['tableCost', 'A table is worth', 'people'],
  ['gelRate', 'Each person hands out', 'gels/min'],
  ['cleanPer', 'Each person cleans up', 'cups/h'],
] as const;

export function CrewFields(props: CrewProps): JSX.Element {
  const { fallback } = props;
  return (
    <>
      {NUMBERS.map(([key, label, unit]) => (
        <NumberField key={key} {...ruleField(props, ['crew', key], label)} fallback={fallback[key]} unit={unit} />
      ))}
      <LengthField
        {...ruleField(props, ['crew', 'handSpacing'], 'Space between hand-out people')}
        fallback={fallback.handSpacing}
      />
      <DurationField
        {...ruleField(props, ['crew', 'ready'], 'Ready before the first runner')}
        fallback={fallback.ready}
      />
      <DurationField {...ruleField(props, ['crew', 'setUp'], 'Set-up time')} fallback={fallback.setUp} />
      <DurationField
        {...ruleField(props, ['crew', 'pourWithin'], 'Pre-pour takes at most')}
        fallback={fallback.pourWithin}
      />
      <DurationField
        {...ruleField(props, ['crew', 'tapTime'], 'A bottle at the tap')}
        fallback={fallback.tapTime}
        unit="s"
      />
      <DurationField {...ruleField(props, ['crew', 'breakDown'], 'Breaking down')} fallback={fallback.breakDown} />
      <DurationField
        {...ruleField(props, ['crew', 'breakDownTable'], 'and for each table')}
        fallback={fallback.breakDownTable}
      />
      <DurationField {...ruleField(props, ['crew', 'longest'], 'Longest shift')} fallback={fallback.longest} unit="h" />
    </>
  );
}
