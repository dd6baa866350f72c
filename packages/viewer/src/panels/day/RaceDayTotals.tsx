/** What all stations together need: crew at a time, and every pack to be bought. */
import type { RaceDay } from '@halfcup/core';
import type { JSX } from 'preact';
import { grouped } from './words.ts';
import { useStore } from '../../state/store/store.ts';
import { Fact } from '../ui/Fact.tsx';
import { OrderFacts } from './OrderFacts.tsx';
import { SuppliesTable } from './SuppliesTable.tsx';

export function RaceDayTotals({ day }: { readonly day: RaceDay }): JSX.Element {
  const { units } = useStore();
  const cups = (drink: 'water' | 'sportsDrink'): number =>
    day.stations.reduce((sum, station) => sum + station.cups[drink], 0);
  return (
    <section aria-labelledby="day-totals">
      <h3 id="day-totals">All stations together</h3>
      <dl class="facts">
        <Fact name="Crew needed at once, all stations">{grouped(day.totals.crew)}</Fact>
        <Fact name="Cups of water">{grouped(Math.ceil(cups('water')))}</Fact>
        <Fact name="Cups of sports drink">{grouped(Math.ceil(cups('sportsDrink')))}</Fact>
      </dl>
      <SuppliesTable packs={day.totals.packs} units={units.value} />
      <OrderFacts day={day} />
    </section>
  );
}
