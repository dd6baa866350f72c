/** One station's race day: the chart and everything that follows from who arrives when. */
import { type RaceDay, type StationDay, type StationLayout } from '@halfcup/core';
import type { Plan } from '@halfcup/core/plan';
import { voiceOf } from '@halfcup/core/sentences';
import { formatClock, formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { grouped } from './words.ts';
import { numberOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { ArrivalsChart } from './ArrivalsChart.tsx';
import { CrewFacts } from './CrewFacts.tsx';
import { DAY_HEADING } from './DayTable.tsx';
import { Fact } from '../ui/Fact.tsx';
import { PrePourFacts } from './PrePourFacts.tsx';
import { StationStops } from './StationStops.tsx';
import { SuppliesTable } from './SuppliesTable.tsx';

function Times({ day }: { readonly day: StationDay }): JSX.Element | null {
  const { quantiles, peak, crewAt, openFrom, openUntil, packedAt = null } = day;
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
      {packedAt === null ? null : <Fact name="All packed by">{formatMinute(packedAt)}</Fact>}
    </dl>
  );
}

/** What runners of each race take here, and since when they have had nothing to drink. */
function TakeFacts({ day, races }: { readonly day: StationDay; readonly races: Plan['races'] }): JSX.Element {
  const bottles = day.handOut === 'bottles';
  return (
    <>
      <h3>What each takes</h3>
      <dl class="facts">
        {day.races.map(({ race, take, sinceDrink = 0 }) =>
          take === undefined ? null : (
            <Fact key={race} name={races.find(({ id }) => id === race)?.name ?? race}>
              {`${bottles ? `${take.litres.toFixed(2)} l` : `${(take.water + take.sportsDrink).toFixed(1)} cups`}, ${Math.round(sinceDrink / 60)} min after the last drink`}
            </Fact>
          ),
        )}
      </dl>
    </>
  );
}

/** Full jugs that should be left at each half hour. */
function JugsLeft({ day }: { readonly day: StationDay }): JSX.Element | null {
  const { jugsLeft = [] } = day;
  if (jugsLeft.length === 0) return null;
  const drinks = (['water', 'sportsDrink'] as const).filter((drink) =>
    jugsLeft.some((row) => row[drink] !== undefined),
  );
  return (
    <>
      <h3>Full jugs that should be left</h3>
      <p class="soft">With fewer at these times, the captain calls for more.</p>
      <table class="day-jugs">
        <thead>
          <tr>
            <th scope="col">Time</th>
            {drinks.map((drink) => (
              <th key={drink} scope="col" class="number">
                {drink === 'water' ? 'Water' : 'Sports drink'}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {jugsLeft.map((row) => (
            <tr key={row.at}>
              <th scope="row">{formatMinute(row.at)}</th>
              {drinks.map((drink) => (
                <td key={drink} class="number">
                  {grouped(row[drink] ?? 0)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** What happens if runners drink half as much again; nothing where it would last. */
function SecondDelivery({ station, day }: { readonly station: StationDay; readonly day: RaceDay }): JSX.Element | null {
  const { shortage = null } = station;
  if (shortage === null) return null;
  const delivery = day.resupply?.find(({ station: id }) => id === station.id);
  const drink = shortage.drink === 'water' ? 'Water' : 'Sports drink';
  return (
    <>
      <h3>If runners drink half as much again</h3>
      <dl class="facts">
        <Fact name={`${drink} runs out`}>{formatMinute(shortage.at)}</Fact>
        <Fact name="The captain sees it">
          {shortage.seen === null ? 'not before it runs out' : formatMinute(shortage.seen)}
        </Fact>
        {delivery === undefined || delivery.arrives === null ? null : (
          <Fact name="A second delivery arrives">
            {`${formatMinute(delivery.arrives)}, ${delivery.inTime ? 'in time' : 'too late: send more from the start'}`}
          </Fact>
        )}
      </dl>
    </>
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
  const voice = { ...voiceOf(open.analysis.plan), language: 'en' };
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
      <TakeFacts day={own} races={open.analysis.plan.races} />
      <h3>Poured before the first runner</h3>
      <p class="soft">
        The pre-pour: cups already filled on the tables when the first runner comes, because pouring cannot keep up with
        the peak.
      </p>
      {water === undefined && sportsDrink === undefined ? <p class="soft">No drink is served here.</p> : null}
      {water === undefined ? null : <PrePourFacts drink="Water" prePour={water} voice={voice} />}
      {sportsDrink === undefined ? null : <PrePourFacts drink="Sports drink" prePour={sportsDrink} voice={voice} />}
      <h3>Crew</h3>
      <CrewFacts crew={own.crew} />
      <h3>Supplies</h3>
      <SuppliesTable packs={own.packs} units={units.value} />
      <JugsLeft day={own} />
      <SecondDelivery station={own} day={day} />
      <h3>Drop-off and collection</h3>
      <StationStops station={station.id} day={day} open={open} />
    </>
  );
}
