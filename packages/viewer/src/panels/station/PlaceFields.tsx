/** Where the station stands: its pin, its course distance, its side. */
import type { Analysis, Finding } from '@halfcup/core';
import { placeText } from '@halfcup/core/sentences';
import { lengthIn, parseLength } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { crossOver, other, pinSide } from '../../state/edits/cross.ts';
import { leadOf } from '../../state/view/derive.ts';
import { moveStation } from '../../state/edits/edits.ts';
import { sendTo } from '../../state/edits/moves.ts';
import { freePlacement } from '../../state/edits/placing.ts';
import { useStore } from '../../state/store/store.ts';
import { run } from '../../state/edits/workbench.ts';
import { sideWords } from '../../words.ts';
import { ChoiceField } from '../ui/fields/ChoiceField.tsx';
import { LengthField } from '../ui/fields/LengthField.tsx';
import { PairField } from '../ui/fields/PairField.tsx';
import { TextField } from '../ui/fields/TextField.tsx';
import { ownField, setOwn, type Editing } from './editing.ts';
import { NudgeButtons } from './NudgeButtons.tsx';

const SIDES = [
  { value: 'left', label: 'left-hand side' },
  { value: 'right', label: 'right-hand side' },
];

const isPosition = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && value.length === 2 && Math.abs(Number(value[0])) <= 180 && Math.abs(Number(value[1])) <= 90;

function CourseDistance(editing: Editing): JSX.Element | null {
  const store = useStore();
  const lead = leadOf(editing.station);
  if (lead === undefined)
    return (
      <p class="soft">No course passes here. Type where the pin is, or drag the station to a course on the map.</p>
    );
  const unit = store.units.value === 'metric' ? 'km' : 'mi';
  const raw = `${lengthIn(lead.measure, unit).toFixed(unit === 'km' ? 3 : 4)} ${unit}`;
  const save = (value: unknown): readonly Finding[] => {
    const read = parseLength(value);
    if (!read.ok)
      return [{ code: 'plan-value', severity: 'error', message: read.message, where: { station: editing.station.id } }];
    return sendTo(store, editing.station.id, read.value);
  };
  return (
    <>
      <LengthField {...ownField(editing, ['on', 'measure'], 'Course distance')} raw={raw} save={save} required long />
      <NudgeButtons {...editing} />
    </>
  );
}

function OnCourse(editing: Editing): JSX.Element | null {
  const { station, open } = editing;
  if (station.station.on === undefined) return null;
  return (
    <>
      <ChoiceField
        {...ownField(editing, ['on', 'course'], 'Course')}
        choices={open.document.plan.courses.map(({ id, name }) => ({ value: id, label: name }))}
        required
      />
      <LengthField
        {...ownField(editing, ['on', 'offset'], 'Distance from the course line')}
        fallback={station.practice.kerb}
      />
    </>
  );
}

/** What a street rests on that nobody has typed. */
function streetHint({ ground }: Analysis): string {
  if (ground === undefined)
    return 'As a dispatcher finds it: street and cross-streets. It is printed for drivers and emergency calls.';
  const { date } = ground.ground.source;
  return `From the map${date === null ? '' : ` of ${date}`}, unless you type it: your words are printed for drivers and emergency calls.`;
}

export function PlaceFields(editing: Editing): JSX.Element {
  const store = useStore();
  const { station, open } = editing;
  const placePin = (value: unknown): readonly Finding[] =>
    isPosition(value)
      ? run(store, moveStation(station.id, station.name, freePlacement(open.analysis, station, value), null))
      : setOwn(store, editing, ['at'], value, 'move');
  const pin = [Number(station.at[0].toFixed(7)), Number(station.at[1].toFixed(7))];
  const lead = leadOf(station);
  const to = other(pinSide(station));
  return (
    <>
      <CourseDistance {...editing} />
      <PairField {...ownField(editing, ['at'], 'Pin: longitude, latitude')} raw={pin} save={placePin} required wide />
      <OnCourse {...editing} />
      <ChoiceField
        {...ownField(editing, ['side'], 'Side')}
        choices={SIDES}
        fallback={`as the pin stands: ${sideWords(lead?.side ?? 'unclear')}`}
        hint="As seen by the runners who come past first. A side chosen here counts, wherever the pin is."
      />
      <TextField
        {...ownField(editing, ['street'], 'Street')}
        fallback={station.street === undefined ? undefined : (placeText(station.street, 'en') ?? undefined)}
        hint={streetHint(open.analysis)}
      />
      {lead === undefined ? null : (
        <button type="button" onClick={() => void crossOver(store, station.id)}>
          Move to the {to}-hand side
        </button>
      )}
    </>
  );
}
