/** What changes from other positions to those shown: where stations stand, spacing, items, findings. */
import type { Comparison } from '@halfcup/core';
import type { JSX } from 'preact';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { AS_PLANNED, comparisonOf, layBeside, variantName } from '../../state/edits/variants.ts';
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
const PLANNED = '';

function Choices({ names }: { readonly names: readonly string[] }): JSX.Element {
  return (
    <>
      <option value={PLANNED}>{AS_PLANNED}</option>
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
  const read = (value: string): string | null => (value === PLANNED ? null : value);
  return (
    <div class="pair">
      <label>
        <span>From</span>
        <select
          value={against === null ? NONE : (against.variant ?? PLANNED)}
          onChange={({ currentTarget: { value } }) => void layBeside(store, value === NONE ? undefined : read(value))}
        >
          <option value={NONE}>nothing beside</option>
          <Choices names={names} />
        </select>
      </label>
      <label>
        <span>To, as shown</span>
        <select
          value={open.variant ?? PLANNED}
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
  names,
}: {
  readonly title: string;
  readonly findings: Comparison['findings']['gained'];
  readonly names: Names;
}): JSX.Element {
  return (
    <>
      <h4>
        {title}: {findings.length === 0 ? 'none' : counted(findings.length, 'finding')}
      </h4>
      {findings.length === 0 ? null : (
        <ul class="findings">
          {findings.map((finding, index) => (
            <FindingCard
              key={`${finding.code}-${index}`}
              finding={finding}
              station={finding.where.station === undefined ? null : names.stationOf(finding.where.station)}
            />
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
    after.analysis.stations.map((station) => [station.id, `${station.index + 1} · ${station.name}`]),
  );
  const names: Names = {
    stationOf: (id) => byId.get(id) ?? id,
    choose: (id) => chooseStation(store, id),
  };
  const changed = spacing.some(({ legs }) => legs.length > 0);
  if (stations.length === 0 && items.length === 0 && !changed && findings.gained.length + findings.lost.length === 0) {
    return (
      <p class="soft" role="status">
        Nothing differs between the two.
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
      <h4>Items laid out otherwise</h4>
      {items.length === 0 ? (
        <p class="soft">None: signs, tables and trash drops keep their distances.</p>
      ) : (
        <ItemRows items={items} variants={variants} names={names} unit={wheelUnit(units)} units={units} />
      )}
      <Findings title={`Gained by ${variants[1]}`} findings={findings.gained} names={names} />
      <Findings title={`Lost from ${variants[0]}`} findings={findings.lost} names={names} />
    </>
  );
}

export function SideBySide(): JSX.Element | null {
  const store = useStore();
  const [open, against] = [store.open.value, store.against.value];
  if (open === null) return null;
  return (
    <section class="side-by-side" aria-labelledby="beside-heading">
      <h3 id="beside-heading">Side by side</h3>
      <Pair open={open} against={against} />
      {against === null ? (
        <p class="soft">
          Choose positions to lay beside those shown: what changes is listed here, and both are on the map.
        </p>
      ) : against.variant === open.variant && store.trial.value === null ? (
        <p class="soft" role="status">
          Both are {variantName(open.variant)}. Choose other positions, or move a station.
        </p>
      ) : (
        <Changes before={against} after={open} />
      )}
    </section>
  );
}
