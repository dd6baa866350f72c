/** Work under way, how far it is, and a button that stops it. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';

export function JobLine(): JSX.Element | null {
  const { job } = useStore();
  const running = job.value;
  if (running === null) return null;
  return (
    <div class="job">
      <label>
        <span>{running.label}</span>
        <progress max={1} {...(running.share === null ? {} : { value: running.share })} />
      </label>
      <button type="button" onClick={running.stop}>
        Stop
      </button>
    </div>
  );
}
