/** What the search found: the plan before and after, each move, what is proven, and what may be done with it. */
import type { LongestLeg } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { numberOf } from '../../state/view/derive.ts';
import { saveImproved, stillOf, applyImproved } from '../../state/edits/improved.ts';
import { useStore, type Improved, type OpenPlan } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { ITEM_WORD, lengthText, longFigure, longUnit } from '../../words.ts';
import { NameForm } from '../ui/NameForm.tsx';
import { provenText } from './words.ts';
import { chooseStation } from '../../state/view/choose.ts';

interface Props {
  readonly improved: Improved;
  readonly open: OpenPlan;
}

function Standings({ improved: { before, after }, open }: Props): JSX.Element {
  const { units } = useStore();
  const nameOf = (race: string): string => open.analysis.plan.races.find(({ id }) => id === race)?.name ?? race;
  const leg = (one: LongestLeg | undefined): string => longFigure(one?.length ?? null, units.value);
  return (
    <table class="items changes">
      <caption>Before and after</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            <span class="unseen">Figure</span>
          </th>
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row" class="left">
            Errors
          </th>
          <td class="figure">{before.error}</td>
          <td class="figure strong">{after.error}</td>
        </tr>
        <tr>
          <th scope="row" class="left">
            Warnings
          </th>
          <td class="figure">{before.warning}</td>
          <td class="figure strong">{after.warning}</td>
        </tr>
        {before.longest.map((longest, index) => (
          <tr key={longest.race}>
            <th scope="row" class="left">
              Longest leg, {nameOf(longest.race)}, {longUnit(units.value)}
            </th>
            <td class="figure">{leg(longest)}</td>
            <td class="figure strong">{leg(after.longest[index])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Moves({ improved, open }: Props): JSX.Element {
  const store = useStore();
  const units = store.units.value;
  const named = (id: string): string => {
    const station = open.analysis.stations.find((one) => one.id === id);
    return station === undefined ? id : `${numberOf(station)} · ${station.name}`;
  };
  return (
    <table class="items changes">
      <caption>Moves along the course, and the new course distance</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Station
          </th>
          <th scope="col">Moves</th>
          <th scope="col">New distance, {longUnit(units)}</th>
        </tr>
      </thead>
      <tbody>
        {improved.moves.map(({ station, shift, measure, dropped, walked }) => (
          <tr key={station}>
            <th scope="row" class="left">
              <button type="button" class="link-button" onClick={() => chooseStation(store, station)}>
                {named(station)}
              </button>
              {dropped.length === 0 ? null : (
                <span class="wording soft">
                  {dropped.map((kind) => ITEM_WORD[kind]).join(', ')}: back to the standard distance
                </span>
              )}
              {walked ? (
                <span class="wording soft">Walk the new place; only the old one was checked on foot</span>
              ) : null}
            </th>
            <td class="figure">
              {lengthText(Math.abs(shift), units)} {shift < 0 ? 'back' : 'forward'}
            </td>
            <td class="figure">{longFigure(measure, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Apply({ improved }: Props): JSX.Element {
  const store = useStore();
  const target = improved.variant === null ? 'plan' : `“${improved.variant}”`;
  const apply = (): void => {
    const refusal = firstMessage(store, applyImproved(store, improved));
    store.notice.value = { text: refusal ?? `Applied to ${target}. Undo reverts this.` };
    if (refusal === null) requestAnimationFrame(() => document.querySelector<HTMLElement>('.improve-button')?.focus());
  };
  return (
    <>
      <div class="button-row">
        <button type="button" onClick={apply}>
          Apply to {target}
        </button>
      </div>
      <NameForm
        label="Or as a variant named"
        actions={[{ label: 'Save as variant', act: (name) => saveImproved(store, improved, name) }]}
      />
    </>
  );
}

export function ImproveResult({ improved, open }: Props): JSX.Element {
  const { units } = useStore();
  const current = stillOf(open, improved);
  const stays = improved.stays.map(
    ({ station, why }) => `${open.analysis.stations.find(({ id }) => id === station)?.name ?? station} stays: ${why}.`,
  );
  return (
    <div class="improve-result">
      <Standings improved={improved} open={open} />
      {improved.moves.length === 0 ? (
        <p>No better places found: nothing moves.</p>
      ) : (
        <Moves improved={improved} open={open} />
      )}
      <p class="soft">
        {provenText(improved, units.value)}
        {stays.length === 0 ? '' : ` ${stays.join(' ')}`}
        {improved.after.idle > improved.before.idle ? ' A waiver is no longer needed: remove it from the plan.' : ''}
      </p>
      {improved.moves.length === 0 ? null : current ? (
        <Apply improved={improved} open={open} />
      ) : (
        <p role="status">The plan or the variant shown has changed since. Search again to apply these, or undo.</p>
      )}
    </div>
  );
}
