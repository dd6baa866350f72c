/** Cups of one drink that stand poured before the first runner, and what that figure comes from. */
import type { StationDay } from '@halfcup/core';
import type { JSX } from 'preact';
import { grouped, wholePercent } from './words.ts';
import { counted } from '../../words.ts';
import { Fact } from '../ui/Fact.tsx';

type PrePour = NonNullable<StationDay['prePour']['water']>;

const cupsText = (cups: number): string => `${grouped(Math.ceil(cups))} ${Math.ceil(cups) === 1 ? 'cup' : 'cups'}`;

export function PrePourFacts({ drink, prePour }: { readonly drink: string; readonly prePour: PrePour }): JSX.Element {
  const { cups, share, massCurve, floor, room, tables, layers, pourers } = prePour;
  return (
    <section class="pre-pour" aria-label={drink}>
      <p>
        <span class="soft">{drink}: </span>
        <strong>
          {grouped(cups)} cups on {counted(tables, 'table')}, {counted(layers, 'layer')}
        </strong>{' '}
        ({wholePercent(share)} of the day’s cups)
      </p>
      <dl class="facts">
        <Fact name="Needed for the arrivals">{cupsText(massCurve)}</Fact>
        <Fact name="Minimum in the plan">{cupsText(floor)}</Fact>
        <Fact name="Room on the tables">{room === null ? 'as many as needed' : cupsText(room)}</Fact>
        <Fact name="Pourers to keep up with the arrivals">{String(pourers)}</Fact>
      </dl>
    </section>
  );
}
