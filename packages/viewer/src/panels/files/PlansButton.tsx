/** Opens the list of plans; shows where the last change is not kept. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { useUnfolded } from '../ui/useUnfolded.ts';
import { PlansPanel } from './PlansPanel.tsx';

const STATE = {
  kept: '',
  writing: '',
  failed: ', the last change is not saved in this browser',
  elsewhere: ', this plan is open in another tab',
} as const;

export function PlansButton(): JSX.Element {
  const store = useStore();
  const { inside, button, shown, toggle, close } = useUnfolded();
  const keeping = store.keeping.value;
  return (
    <div ref={inside} class="plans-tools">
      <button
        ref={button}
        type="button"
        class="save-button"
        aria-label={`Plans${STATE[keeping]}`}
        title={`Plans${STATE[keeping]}`}
        aria-expanded={shown}
        aria-controls="plans"
        data-keeping={keeping}
        onClick={toggle}
      >
        Plans
        <span class={STATE[keeping] === '' ? 'unsaved-mark off' : 'unsaved-mark'} aria-hidden="true" />
      </button>
      {shown ? <PlansPanel close={close} /> : null}
    </div>
  );
}
