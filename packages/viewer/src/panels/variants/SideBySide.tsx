/** What changes from another variant to the one shown: where stations stand, spacing, items, findings. */
import type { Comparison } from '@halfcup/core';
import type { JSX } from 'preact';
import { numberOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { MAIN_PLAN, comparisonOf, compareWith, variantName } from '../../state/edits/variants.ts';
import { subjectIn } from '../../state/view/voice.ts';
import { showVariant } from '../../state/edits/workbench.ts';
import { counted, longUnit, wheelUnit } from '../../words.ts';
import { FindingCard } from '../review/FindingCard.tsx';
import type { Names } from './ChangeTable.tsx';
import { ItemRows } from './ItemRows.tsx';
import { MovedRows } from './MovedRows.tsx';
import { SignRows } from './SignRows.tsx';
import { SpacingRows } from './SpacingRows.tsx';
import { chooseStation } from '../../state/view/choose.ts';

const NONE = '\u0000';
const MAIN = '';

function Choices({ names }: { readonly names: readonly string[] }): JSX.Element {
  return (
    <>
      <option value={MAIN}>{MAIN_PLAN}</option>
      {names.map((name) => (
        <option key={name} value={name}>
          {name}
        </option>
      ))}
    </>
  );
}

function Pair({ open, against }: { readonly open: OpenPlan; readonly against: OpenPlan | null }): JSX.Element {
  const store = useStore();
  const names = open.document.plan.variants.map(({ name }) => name);
  const read = (value: string): string | null => (value === MAIN ? null : value);
  return (
    <div class="pair">
      <label>
        <span>Compare with</span>
        <select
          value={against === null ? NONE : (against.variant ?? MAIN)}
          onChange={({ currentTarget: { value } }) => void compareWith(store, value === NONE ? undefined : read(value))}
        >
          <option value={NONE}>none</option>
          <Choices names={names} />
        </select>
      </label>
      <label>
        <span>Shown</span>
        <select
          value={open.variant ?? MAIN}
          onChange={({ currentTarget: { value } }) => void showVariant(store, read(value))}
        >
          <Choices names={names} />
        </select>
      </label>
    </div>
  );
}

function Findings({
  title,
  findings,
  open,
}: {
  readonly title: string;
  readonly findings: Comparison['findings']['gained'];
  readonly open: OpenPlan;
}): JSX.Element {
  return (
    <>
      <h4>
        {title}: {findings.length === 0 ? 'none' : counted(findings.length, 'finding')}
      </h4>
      {findings.length === 0 ? null : (
        <ul class="findings">
          {findings.map((finding, index) => (
            <FindingCard key={`${finding.code}-${index}`} finding={finding} subject={subjectIn(open)(finding)} />
          ))}
        </ul>
      )}
    </>
  );
}

function Changes({ before, after }: { readonly before: OpenPlan; readonly after: OpenPlan }): JSX.Element {
  const store = useStore();
  const comparison = comparisonOf(before, after);
  const units = store.units.value;
  const { variants, stations, spacing, items, findings } = comparison;
  const byId = new Map(
    after.analysis.stations.map((station) => [station.id, `${numberOf(station)} · ${station.name}`]),
  );
  const names: Names = {
    stationOf: (id) => byId.get(id) ?? id,
    choose: (id) => chooseStation(store, id),
  };
  const changed = spacing.some(({ legs }) => legs.length > 0);
  if (stations.length === 0 && items.length === 0 && !changed && findings.gained.length + findings.lost.length === 0) {
    return (
      <p class="soft" role="status">
        No differences.
      </p>
    );
  }
  return (
    <>
      <MovedRows stations={stations} names={names} units={units} />
      <h4>Spacing</h4>
      {after.analysis.plan.races.map((race) => {
        const own = spacing.find((one) => one.race === race.id);
        return own === undefined ? null : (
          <SpacingRows
            key={race.id}
            race={race.name}
            spacing={own}
            variants={variants}
            names={names}
            unit={longUnit(units)}
            units={units}
          />
        );
      })}
      <SignRows before={before} after={after} variants={variants} names={names} units={units} />
      <h4>Items that move</h4>
      {items.length === 0 ? (
        <p class="soft">None: signs, tables and trash drops keep their distances.</p>
      ) : (
        <ItemRows items={items} variants={variants} names={names} unit={wheelUnit(units)} units={units} />
      )}
      <Findings title={`New in ${variants[1]}`} findings={findings.gained} open={after} />
      <Findings title={`Resolved from ${variants[0]}`} findings={findings.lost} open={before} />
    </>
  );
}

export function SideBySide(): JSX.Element | null {
  const store = useStore();
  const [open, against] = [store.open.value, store.against.value];
  if (open === null) return null;
  return (
    <section class="side-by-side" aria-labelledby="beside-heading">
      <h3 id="beside-heading">Compare</h3>
      <Pair open={open} against={against} />
      {against === null ? (
        <p class="soft">Choose a variant to compare with the one shown. The map then shows both.</p>
      ) : against.variant === open.variant && store.trial.value === null ? (
        <p class="soft" role="status">
          Both are {variantName(open.variant)}. Choose another variant, or move a station.
        </p>
      ) : (
        <Changes before={against} after={open} />
      )}
    </section>
  );
}
