/** What the chosen station is doing at the clock's time: arrivals, cups, jugs, hands. */
import { formatMinute } from '@halfcup/core/units';
import type { DrinkState, StationState } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { momentTold, nameOf } from '../../state/view/clock.ts';
import { grouped, PHASE_WORD } from '../../words.ts';
import { Fact } from '../ui/Fact.tsx';
import { PhaseIcon } from '../ui/PhaseMark.tsx';

const whole = (count: number): string => grouped(Math.round(count));

function Drink({ name, drink }: { readonly name: string; readonly drink: DrinkState }): JSX.Element {
  const { poured, standing, taken, left, jugs } = drink;
  return (
    <>
      <Fact name={`${name}, cups poured`}>{whole(poured)}</Fact>
      <Fact name="On the tables">{whole(standing)}</Fact>
      <Fact name="Taken, so on the road or in boxes">{whole(taken)}</Fact>
      <Fact name="Left to pour">{whole(left)}</Fact>
      {jugs === undefined ? null : <Fact name="Full jugs left">{`${jugs.full} of ${jugs.sent}`}</Fact>}
    </>
  );
}

function Shown({ state, open }: { readonly state: StationState; readonly open: OpenPlan }): JSX.Element {
  const own = open.analysis.day?.stations.find(({ id }) => id === state.station);
  const { water, sportsDrink } = state.drinks;
  return (
    <section class="clock-here" aria-label="At the time of the clock">
      <h3>
        <PhaseIcon phase={state.phase} />
        {formatMinute(state.time)}: {PHASE_WORD[state.phase]}
      </h3>
      <dl class="facts">
        {Object.entries(state.arrived).map(([race, count]) => (
          <Fact key={race} name={`Arrived, ${nameOf(open.analysis.plan.races, race)}`}>
            {grouped(count)}
          </Fact>
        ))}
        <Fact name="In this minute">{grouped(state.now)}</Fact>
        <Fact name="Hands busy">{`${state.handsBusy} of ${own?.crew.handOut ?? 0}`}</Fact>
        {water === undefined ? null : <Drink name="Water" drink={water} />}
        {sportsDrink === undefined ? null : <Drink name="Sports drink" drink={sportsDrink} />}
      </dl>
    </section>
  );
}

/** Nothing where the clock is off. */
export function ClockFacts({
  station,
  open,
}: {
  readonly station: string;
  readonly open: OpenPlan;
}): JSX.Element | null {
  const state = momentTold(useStore())?.states.find((one) => one.station === station);
  return state === undefined ? null : <Shown state={state} open={open} />;
}
