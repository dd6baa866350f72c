/** What counted stations teach: used beside expected, and rates for the next race with how far the stations differ. */
import type { RaceDay } from '@halfcup/core';
import { learnRates, learntSupplies, type Learnt, type LearntSupplies } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { applyRates, hasRates } from '../../state/edits/year.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { Fact } from '../ui/Fact.tsx';
import { LeftoversFile } from './LeftoversFile.tsx';
import { grouped } from './words.ts';
import { DIVISION_WORD, kindWord, rateText, spreadText } from './yearWords.ts';

const Head = ({
  left,
  right,
}: {
  readonly left: readonly string[];
  readonly right: readonly string[];
}): JSX.Element => (
  <thead>
    <tr>
      {left.map((text) => (
        <th key={text} scope="col" class="left">
          {text}
        </th>
      ))}
      {right.map((text) => (
        <th key={text} scope="col">
          {text}
        </th>
      ))}
    </tr>
  </thead>
);

const Basis = ({ learnt: { basis } }: { readonly learnt: Learnt }): JSX.Element => (
  <table class="items learning-basis">
    <caption>Used and expected, at the stations that counted</caption>
    <Head left={['What']} right={['Used', 'Expected', 'Stations']} />
    <tbody>
      {basis.map(({ kind, used, reckoned, stations }) => (
        <tr key={kind}>
          <th scope="row" class="left">
            {kindWord(kind)}
          </th>
          <td class="figure">{grouped(used)}</td>
          <td class="figure">{grouped(Math.round(reckoned))}</td>
          <td class="figure">{stations.length}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** Rates of a division, as the plan has them and as they are proposed. */
function Rates({ learnt: { basis, take } }: { readonly learnt: Learnt }): JSX.Element {
  return (
    <table class="items learning-rates">
      <caption>Taken by each person at a station, on average</caption>
      <Head left={['Who', 'What']} right={['Plan', 'Proposed', 'Single stations']} />
      <tbody>
        {(['run', 'walk', 'wheels'] as const).flatMap((division) =>
          basis.map(({ kind, factor, spread }) => {
            const rate = take[division]?.[kind];
            if (rate === undefined) return null;
            const now = factor === 0 ? 0 : rate / factor;
            return (
              <tr key={`${division} ${kind}`}>
                <th scope="row" class="left">
                  {DIVISION_WORD[division]}
                </th>
                <td class="left">{kindWord(kind)}</td>
                <td class="figure">{factor === 0 ? '' : rateText(now)}</td>
                <td class="figure strong">
                  {rateText(rate)}
                  {spread === null ? '' : ` ± ${rateText(now * spread.error)}`}
                </td>
                <td class="figure">{spreadText(now, spread)}</td>
              </tr>
            );
          }),
        )}
      </tbody>
    </table>
  );
}

/** What the plan is given for drinks: the time since the last drink does the rest. */
const Drinks = ({ supplies: { drinkRate, waterShare } }: { readonly supplies: LearntSupplies }): JSX.Element | null =>
  drinkRate === undefined ? null : (
    <dl class="facts">
      <Fact name="Proposed, litres an hour">{rateText(drinkRate)}</Fact>
      {waterShare === undefined ? null : (
        <Fact name="Proposed share of water">{`${Math.round(waterShare * 100)} %`}</Fact>
      )}
    </dl>
  );

interface Props {
  readonly day: RaceDay;
  readonly open: OpenPlan;
}

export function LearningCard({ day, open }: Props): JSX.Element {
  const store = useStore();
  const learnt = learnRates(open.analysis.plan, day.stations);
  const supplies = learntSupplies(open.analysis.plan, learnt);
  const applied = hasRates(open, supplies);
  const apply = (): void => {
    const refused = run(store, applyRates(supplies));
    store.notice.value = { text: firstMessage(store, refused) ?? 'Learnt rates applied. Undo reverts this.' };
  };
  return (
    <section class="learning" aria-labelledby="learning">
      <h3 id="learning">Learning</h3>
      {learnt.basis.length === 0 ? (
        <p class="soft">
          No station has counts yet. After the race choose a station and fill in what is left there, or read a form.
        </p>
      ) : (
        <>
          <p class="soft">
            What was used beside what this plan expects. A busy station weighs more than a quiet one; ± is the standard
            error over the stations, and the range is that of single stations.
          </p>
          <Basis learnt={learnt} />
          <Rates learnt={learnt} />
          <Drinks supplies={supplies} />
          <p class="soft">
            The rates hold for weather such as that of the counted day, and take the place of those by heat: a hotter
            day takes more.
          </p>
          <p>
            <button type="button" disabled={applied} onClick={apply}>
              {applied ? 'The plan has these rates' : 'Use the proposed rates'}
            </button>
          </p>
        </>
      )}
      <LeftoversFile day={day} open={open} />
    </section>
  );
}
