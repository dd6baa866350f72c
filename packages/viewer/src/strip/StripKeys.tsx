/** The strip's keys, for people who look for them and for screen readers, which read them with what they belong to. */
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { wheelUnit } from '../words.ts';

export function StripKeys(): JSX.Element {
  const unit = wheelUnit(useStore().units.value);
  return (
    <details class="strip-keys">
      <summary>Keys</summary>
      <div>
        <p id="strip-ring-keys">
          On a station: left and right arrow move it 1 {unit} along the course, with Shift 10 {unit}, with Alt 100{' '}
          {unit} (or Page Up and Page Down); up arrow sends it to the left-hand side, down arrow to the right-hand side,
          S across; Enter chooses it, D doubles it, Delete deletes it. Drag it with mouse or finger; Escape puts it
          back.
        </p>
        <p id="strip-ground-keys">
          On the course: left and right arrow, Page Up, Page Down, Home and End point at a place; plus and minus zoom, 0
          shows the whole course; Enter goes there on the map, W asks where it is, A adds a station there. Pressing the
          course line asks where that is.
        </p>
      </div>
    </details>
  );
}
