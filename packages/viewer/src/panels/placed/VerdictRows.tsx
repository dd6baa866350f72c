/** The verdicts as a table; choosing one goes to where it was recorded. */
import type { PlacedVerdict, StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { batch } from '@preact/signals';
import { useStore, type Store } from '../../state/store/store.ts';
import { wheelFigure, wheelRange, wheelUnit } from '../../words.ts';
import { moveText, placedItem, VERDICT_WORD } from '../../placedWords.ts';
import { VerdictMark } from './VerdictMark.tsx';
import { chooseStation } from '../../state/view/choose.ts';

function go(store: Store, { station, course, at }: PlacedVerdict): void {
  batch(() => {
    chooseStation(store, station);
    store.destination.value = { kind: 'place', course, measure: null, at };
  });
}

interface Props {
  readonly verdicts: readonly PlacedVerdict[];
  readonly stations: readonly StationLayout[];
  readonly units: Units;
}

export function VerdictRows({ verdicts, stations, units }: Props): JSX.Element {
  const store = useStore();
  const nameOf = (id: string): string => {
    const station = stations.find((one) => one.id === id);
    return station === undefined ? id : `${station.index + 1} · ${station.name}`;
  };
  return (
    <table class="items verdicts">
      <caption>Signs: distance to the first table. Trash: distance from the last one.</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Item
          </th>
          <th scope="col" class="left">
            Result<span class="unit">and how far to move it</span>
          </th>
          <th scope="col">
            Measured<span class="unit">and limit, {wheelUnit(units)}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {verdicts.map((verdict, index) => (
          <tr
            key={`${verdict.station}-${verdict.item}-${verdict.end ?? ''}-${index}`}
            class={`verdict-${verdict.verdict.replace(' ', '-')}`}
          >
            <th scope="row" class="left">
              <button type="button" class="link-button" onClick={() => go(store, verdict)}>
                {nameOf(verdict.station)}
              </button>
              <span class="wording soft">
                {placedItem(verdict)}
                {verdict.by === 'wheel' ? ', by wheel' : ''}
                {verdict.reference === 'planned' ? ', table not recorded: planned place used' : ''}
              </span>
            </th>
            <td class="left">
              <span class="stacked verdict">
                <VerdictMark verdict={verdict.verdict} />
                {VERDICT_WORD[verdict.verdict]}
              </span>
              <span class="stacked move">{moveText(verdict, units)}</span>
            </td>
            <td class="figure">
              <span class="stacked measured">
                {wheelFigure(verdict.measured, units)} ± {wheelFigure(verdict.margin, units)}
              </span>
              <span class="stacked soft limit">{wheelRange(verdict.limit, units)}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
