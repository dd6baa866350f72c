/** Which stations may move; those that cannot say so. */
import type { StationLayout } from '@halfcup/core';
import type { JSX } from 'preact';
import { numberOf } from '../../state/view/derive.ts';
import { useId } from 'preact/hooks';

interface Props {
  readonly stations: readonly StationLayout[];
  /** Ids of those that stay by choice. */
  readonly left: ReadonlySet<string>;
  readonly canMove: (station: StationLayout) => boolean;
  readonly onChange: (left: ReadonlySet<string>) => void;
  readonly trouble: string | null;
}

export function MovableStations({ stations, left, canMove, onChange, trouble }: Props): JSX.Element {
  const id = useId();
  const toggled = (station: string): ReadonlySet<string> => {
    const next = new Set(left);
    if (!next.delete(station)) next.add(station);
    return next;
  };
  return (
    <fieldset class="entry-set movable" {...(trouble === null ? {} : { 'aria-describedby': `${id}-trouble` })}>
      <legend class="entry-label">Stations that may move</legend>
      <div class="button-row">
        <button type="button" onClick={() => onChange(new Set())}>
          All
        </button>
        <button type="button" onClick={() => onChange(new Set(stations.map((station) => station.id)))}>
          None
        </button>
      </div>
      <div class="entry-set-row">
        {stations.map((station) => {
          const able = canMove(station);
          return (
            <label key={station.id} class="entry-set-one">
              <input
                type="checkbox"
                disabled={!able}
                checked={able && !left.has(station.id)}
                onChange={() => onChange(toggled(station.id))}
              />
              {numberOf(station)} · {station.name}
              {able ? null : <span class="soft">, {station.station.fixed ? 'fixed' : 'serves nobody'}</span>}
            </label>
          );
        })}
      </div>
      {trouble === null ? null : (
        <p class="entry-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </p>
      )}
    </fieldset>
  );
}
