/** Along the course by 1, 10 or 100 m or yd, the station's side and offset kept; presses that follow one another are one step of undo. */
import { metres } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { nudge } from '../../state/edits/moves.ts';
import { useStore } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { wheelUnit } from '../../words.ts';
import type { Editing } from './editing.ts';

const STEPS = [-100, -10, -1, 1, 10, 100] as const;

export function NudgeButtons({ station }: Editing): JSX.Element {
  const store = useStore();
  const unit = wheelUnit(store.units.value);
  const press = (step: number): void => {
    const [first] = nudge(store, station.id, metres(step, unit === 'm' ? 'm' : 'yd'));
    if (first !== undefined) store.notice.value = { text: messageOf(store, first) };
  };
  return (
    <div class="group nudges" role="group" aria-label="Along the course">
      {STEPS.map((step) => (
        <button
          key={step}
          type="button"
          aria-label={`${Math.abs(step)} ${unit} ${step < 0 ? 'back' : 'forward'} along the course`}
          onClick={() => press(step)}
        >
          {step < 0 ? `−${-step}` : `+${step}`}
        </button>
      ))}
      <span class="entry-unit nudge-unit" aria-hidden="true">
        {unit}
      </span>
    </div>
  );
}
