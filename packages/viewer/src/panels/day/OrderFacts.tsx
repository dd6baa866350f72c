/** What the order costs and what is to be ordered first; the order, and the crew by the hour, as tables for other tools. */
import type { RaceDay } from '@halfcup/core';
import { crewCsv, orderCsv } from '@halfcup/core/papers';
import { supplyOrder, type SupplyOrder } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { exportFile } from '../../storage/saveFile.ts';
import { Fact } from '../ui/Fact.tsx';
import { openPlanSection } from '../ui/openPlanSection.ts';
import { packWord } from './words.ts';

const money = (amount: number, currency: string): string =>
  `${amount.toLocaleString('en-GB', { minimumFractionDigits: 2, maximumFractionDigits: 2 })} ${currency}`.trim();

const inWords = (date: string): string =>
  new Date(`${date}T00:00:00Z`).toLocaleDateString('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });

/** What is to be ordered first, and by when. */
function firstText({ lines }: SupplyOrder): string | null {
  const [first] = lines;
  if (first === undefined || first.orderBy === null) return null;
  const same = lines.filter(({ orderBy }) => orderBy === first.orderBy).map(({ pack }) => packWord(pack));
  return `${same.join(', ')}, by ${inWords(first.orderBy)}`;
}

export function OrderFacts({ day }: { readonly day: RaceDay }): JSX.Element | null {
  const store = useStore();
  const open = store.open.value;
  if (open === null) return null;
  const { plan } = open.analysis;
  const order = supplyOrder(plan, day);
  const first = firstText(order);
  const give = (name: string, text: string): void =>
    void exportFile(store, name, new Blob([text]), ['Table', 'text/csv', '.csv']);
  return (
    <div class="order-facts">
      {plan.prices === undefined || plan.prices.items.length === 0 ? (
        <p class="soft">
          No prices yet.{' '}
          <button type="button" class="link-button" onClick={() => openPlanSection(store, 'prices')}>
            Plan › Prices
          </button>
        </p>
      ) : (
        <dl class="facts">
          <Fact name="Cost of the order">
            {`${money(order.total, order.currency)}${order.unpriced === 0 ? '' : `, ${order.unpriced} of ${order.lines.length} lines without a price`}`}
          </Fact>
          {first === null ? null : <Fact name="Order first">{first}</Fact>}
        </dl>
      )}
      <div class="button-row">
        <button type="button" onClick={() => give('supply-order.csv', orderCsv(plan, day))}>
          Save the order (CSV)
        </button>
        <button type="button" onClick={() => give('crew-needed.csv', crewCsv(plan, day))}>
          Save crew needs (CSV)
        </button>
      </div>
    </div>
  );
}
