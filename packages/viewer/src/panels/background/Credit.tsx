/** Whose map is seen under the course. */
import type { JSX } from 'preact';
import { creditOf } from '../../state/view/background.ts';
import { useStore } from '../../state/store/store.ts';

export function Credit(): JSX.Element | null {
  const words = creditOf(useStore().background.value);
  return words === null ? null : <p class="map-credit">{words}</p>;
}
