/** Whose map is seen under the course. */
import { mapCreditText } from '@halfcup/core/sentences';
import type { JSX } from 'preact';
import { creditOf } from '../../state/view/background.ts';
import { useStore } from '../../state/store/store.ts';

export function Credit(): JSX.Element | null {
  const { background, open } = useStore();
  const ground = background.value.kind === 'plan' ? open.value?.analysis.ground : undefined;
  const words = ground === undefined ? creditOf(background.value) : mapCreditText(ground.ground.source, 'en');
  return words === null ? null : <p class="map-credit">{words}</p>;
}
