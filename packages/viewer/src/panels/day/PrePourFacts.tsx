/** Cups of one drink that stand poured before the first runner, and what that figure comes from. */
import type { StationDay } from '@halfcup/core';
import { type Voice, prePourText } from '@halfcup/core/sentences';
import type { JSX } from 'preact';
import { grouped, wholePercent } from './words.ts';
import { Fact } from '../ui/Fact.tsx';

type PrePour = NonNullable<StationDay['prePour']['water']>;

const cupsText = (cups: number): string => `${grouped(Math.ceil(cups))} ${Math.ceil(cups) === 1 ? 'cup' : 'cups'}`;

interface Props {
  readonly drink: string;
  readonly prePour: PrePour;
  readonly voice: Voice;
}

export function PrePourFacts({ drink, prePour, voice }: Props): JSX.Element {
  const { cups, share, massCurve, floor, room, tables, cupsPerLayer = cups, pourers } = prePour;
  return (
    <section class="pre-pour" aria-label={drink}>
      <p>
        <span class="soft">{drink}: </span>
        <strong>{prePourText({ cups, tables, cupsPerLayer }, voice)}</strong>{' '}
        <span class="soft">({wholePercent(share)} of the day’s cups)</span>
      </p>
      <dl class="facts">
        <Fact name="Needed for the arrivals">{cupsText(massCurve)}</Fact>
        <Fact name="Minimum in the plan">{cupsText(floor)}</Fact>
        <Fact name="Room on the tables">{room === null ? 'as many as needed' : cupsText(room)}</Fact>
        <Fact name="Pourers who go on pouring">{String(pourers)}</Fact>
      </dl>
    </section>
  );
}
