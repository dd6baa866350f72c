/** A new station at the place asked about, on either side of the course. */
import type { JSX } from 'preact';
import { addOnCourse } from '../../state/edits/moves.ts';
import { ask } from '../../state/view/place.ts';
import { messageOf } from '../../state/view/voice.ts';
import { useStore } from '../../state/store/store.ts';

export function AddHere({ course, measure }: { readonly course: string; readonly measure: number }): JSX.Element {
  const store = useStore();
  const add = (side: 'left' | 'right'): void => {
    const findings = addOnCourse(store, course, measure, side);
    if (findings.length === 0) ask(store, null);
    else store.notice.value = { text: findings.map((one) => messageOf(store, one)).join(' ') };
  };
  return (
    <div class="place-add" role="group" aria-label="Add a station here">
      <span>Add a station here</span>
      <button type="button" onClick={() => add('left')}>
        Left-hand side
      </button>
      <button type="button" onClick={() => add('right')}>
        Right-hand side
      </button>
    </div>
  );
}
