/** The station by its street and cross-streets, and whose word that is. */
import type { StationLayout } from '@halfcup/core';
import { placeText } from '@halfcup/core/sentences';
import type { JSX } from 'preact';
import type { OpenPlan } from '../../state/store/store.ts';

interface Props {
  readonly station: StationLayout;
  readonly open: OpenPlan;
}

export function PlaceLine({ station: { street }, open }: Props): JSX.Element | null {
  const words = street === undefined ? null : placeText(street, 'en');
  if (street === undefined || words === null) return null;
  const day = open.analysis.ground?.ground.source.date ?? null;
  return (
    <p class="station-place">
      <bdi>{words}</bdi>
      {street.by === 'map' ? <span class="soft"> {day === null ? 'by the map' : `by the map of ${day}`}</span> : null}
    </p>
  );
}
