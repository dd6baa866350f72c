/** One station's race day: the chart and everything that follows from who arrives when. */
import { type RaceDay, type StationDay, type StationLayout } from '@halfcup/core';
import { formatClock, formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { grouped } from './words.ts';
import { numberOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { ArrivalsChart } from './ArrivalsChart.tsx';
import { CrewFacts } from './CrewFacts.tsx';
import { DAY_HEADING } from './DayTable.tsx';
import { Fact } from '../ui/Fact.tsx';
import { LeftoversForm } from './LeftoversForm.tsx';
import { PrePourFacts } from './PrePourFacts.tsx';
import { StationStops } from './StationStops.tsx';
import { SuppliesTable } from './SuppliesTable.tsx';

function Times({ day }: { readonly day: StationDay }): JSX.Element | null {
  const { quantiles, peak, crewAt, openFrom, openUntil } = day;
  if (quantiles === null) return null;
  return (
    <dl class="facts">
      {crewAt === null ? null : <Fact name="Crew arrives">{formatMinute(crewAt)}</Fact>}
      {openFrom === null ? null : <Fact name="Ready by">{formatMinute(openFrom)}</Fact>}
      <Fact name="First runner">{formatClock(quantiles.first)}</Fact>
      {peak === null ? null : (
        <Fact name="Busiest minute">{`${grouped(peak.count)}, from ${formatClock(peak.at)}`}</Fact>
      )}
      <Fact name="Half have passed">{formatClock(quantiles.p50)}</Fact>
      <Fact name="90 % have passed">{formatClock(quantiles.p90)}</Fact>
      <Fact name="Last runner">{formatClock(quantiles.last)}</Fact>
      {openUntil === null ? null : (
        <Fact name="Open until">{`about ${formatMinute(openUntil)}, and until race control releases you`}</Fact>
      )}
    </dl>
  );
}

interface Props {
  readonly station: StationLayout;
  readonly own: StationDay;
  readonly day: RaceDay;
  readonly open: OpenPlan;
}

export function StationDayView({ station, own, day, open }: Props): JSX.Element {
  const { units } = useStore();
  const { water, sportsDrink } = own.prePour;
  const head = (
    <h2 id={DAY_HEADING} tabindex={-1}>
      {numberOf(station)} · {station.name}
    </h2>
  );
  if (own.quantiles === null) {
    return (
      <>
        {head}
        <p class="soft">No runners here: no race with waves is served at this station.</p>
      </>
    );
  }
  return (
    <>
      {head}
      <p class="soft">{grouped(own.arrivals)} arrivals</p>
      <ArrivalsChart day={own} races={open.analysis.plan.races} name={station.name} />
      <Times day={own} />
      <h3>Poured before the first runner</h3>
      <p class="soft">
        The pre-pour: cups already filled on the tables when the first runner comes, because pouring cannot keep up with
        the peak.
      </p>
      {water === undefined && sportsDrink === undefined ? <p class="soft">No drink is served here.</p> : null}
      {water === undefined ? null : <PrePourFacts drink="Water" prePour={water} />}
      {sportsDrink === undefined ? null : <PrePourFacts drink="Sports drink" prePour={sportsDrink} />}
      <h3>Crew</h3>
      <CrewFacts crew={own.crew} />
      <h3>Supplies</h3>
      <SuppliesTable packs={own.packs} units={units.value} />
      <h3>Drop-off and collection</h3>
      <StationStops station={station.id} day={day} open={open} />
      <h3>Left after the race</h3>
      <LeftoversForm own={own} name={station.name} open={open} />
    </>
  );
}
