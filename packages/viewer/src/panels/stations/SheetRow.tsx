/** One station of the sheet: selected by its box, every cell edited where it stands. */
import type { Finding, StationLayout } from '@halfcup/core';
import type { Served } from '@halfcup/core/plan';
import { lengthIn, parseLength } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { pinSide } from '../../state/edits/cross.ts';
import { serveForAll, sideForAll } from '../../state/edits/many.ts';
import { sendTo } from '../../state/edits/moves.ts';
import { run } from '../../state/edits/workbench.ts';
import { chooseStation } from '../../state/view/choose.ts';
import { numberOf, leadOf } from '../../state/view/derive.ts';
import { SERVED_KINDS, tablesNow } from '../../state/view/rows.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { firstMessage } from '../../state/view/voice.ts';
import { longUnit, SERVED_WORD, wheelUnit } from '../../words.ts';
import { LENGTH, quantityForm, unitFor } from '../ui/fields/quantity.ts';
import type { Form } from '../ui/fields/useEntry.ts';
import { ownField } from '../station/editing.ts';
import { moveInColumn, SheetCell } from './SheetCell.tsx';

const WORDS: Form = { show: String, write: (text) => text };
const NUMBER: Form = { show: String, write: (text) => (/^\d+$/u.test(text) ? Number(text) : text) };

interface Props {
  readonly station: StationLayout;
  readonly open: OpenPlan;
  readonly chosen: boolean;
  /** A press on its box, with the keys that were held, or an arrow key there. */
  readonly onPick: (how: { readonly range: boolean; readonly more: boolean }) => void;
  readonly onKey: (event: KeyboardEvent) => void;
}

function Distance({ station, open }: Pick<Props, 'station' | 'open'>): JSX.Element {
  const store = useStore();
  const lead = leadOf(station);
  const unit = unitFor('long', store.units.value);
  if (lead === undefined) return <span class="soft">off the course</span>;
  const raw = `${lengthIn(lead.measure, unit as 'km' | 'mi').toFixed(2)} ${unit}`;
  const save = (value: unknown): readonly Finding[] => {
    const read = parseLength(value);
    if (read.ok) return sendTo(store, station.id, read.value);
    return [{ code: 'plan-value', severity: 'error', message: read.message, where: { station: station.id } }];
  };
  const field = { ...ownField({ station, open }, ['on', 'measure'], 'Distance'), raw, save, required: true };
  return <SheetCell field={field} form={quantityForm(LENGTH, unit)} column="measure" figure />;
}

function Side({ station, open }: Pick<Props, 'station' | 'open'>): JSX.Element {
  const store = useStore();
  const side = leadOf(station)?.side ?? 'unclear';
  const change = (to: string): void => {
    if (to !== 'left' && to !== 'right') return;
    const message = firstMessage(store, run(store, sideForAll(open, [station], to)));
    if (message !== null) store.notice.value = { text: message };
  };
  return (
    <select
      class="cell"
      data-column="side"
      aria-label={`Side, ${station.name}`}
      value={side}
      title={side === 'unclear' ? `The pin stands a little to the ${pinSide(station)}` : undefined}
      onChange={(event) => change(event.currentTarget.value)}
    >
      {side === 'unclear' ? <option value="unclear">unclear</option> : null}
      <option value="left">left</option>
      <option value="right">right</option>
    </select>
  );
}

/** Whether a kind is served, and on how many tables. */
function Tables({ station, open, kind }: Pick<Props, 'station' | 'open'> & { readonly kind: Served }): JSX.Element {
  const store = useStore();
  const serves = station.station.serves.includes(kind);
  const toggle = (on: boolean): void => {
    const message = firstMessage(store, run(store, serveForAll([station], kind, on)));
    if (message !== null) store.notice.value = { text: message };
  };
  const now = tablesNow(open, station.id, kind);
  return (
    <span class="cell-tables">
      <input
        type="checkbox"
        data-column={`serves-${kind}`}
        aria-label={`Serves ${SERVED_WORD[kind]}, ${station.name}`}
        checked={serves}
        onChange={(event) => {
          toggle(event.currentTarget.checked);
          // As the plan has it now, whether or not it took that.
          event.currentTarget.checked = station.station.serves.includes(kind);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
          event.preventDefault();
          moveInColumn(event.currentTarget, event.key === 'ArrowDown' ? 1 : -1);
        }}
      />
      {serves ? (
        <SheetCell
          field={ownField({ station, open }, ['tables', kind], `Tables of ${SERVED_WORD[kind]}`)}
          form={NUMBER}
          column={`tables-${kind}`}
          placeholder={now === undefined ? '' : String(now)}
          figure
        />
      ) : null}
    </span>
  );
}

export function SheetRow({ station, open, chosen, onPick, onKey }: Props): JSX.Element {
  const store = useStore();
  const shown = store.selected.value === station.id;
  const press = (event: MouseEvent): void => {
    const on = event.target as HTMLElement;
    if (on.closest('input, select, button') !== null) return;
    if (event.shiftKey || event.ctrlKey || event.metaKey) onPick({ range: event.shiftKey, more: true });
    else chooseStation(store, station.id);
  };
  return (
    <tr class={`${chosen ? 'chosen' : ''}${shown ? ' picked' : ''}`} onClick={press}>
      <td class="cell-pick">
        <input
          type="checkbox"
          data-column="pick"
          aria-label={`Select ${station.name}`}
          checked={chosen}
          onClick={(event) => {
            onPick({ range: event.shiftKey, more: true });
            event.currentTarget.checked = chosen;
          }}
          onKeyDown={onKey}
        />
      </td>
      <td class="figure">
        <button
          type="button"
          class="number-button"
          aria-label={`Show ${station.name} on the map`}
          onClick={() => chooseStation(store, station.id)}
        >
          {numberOf(station)}
        </button>
      </td>
      <th scope="row" class="left cell-name">
        <SheetCell field={ownField({ station, open }, ['name'], 'Name')} form={WORDS} column="name" />
      </th>
      <td class="cell-distance" data-head={longUnit(store.units.value)}>
        <Distance station={station} open={open} />
      </td>
      <td class="cell-side" data-head="side">
        <Side station={station} open={open} />
      </td>
      {SERVED_KINDS.map((kind) => (
        <td key={kind} class={`cell-served cell-${kind}`} data-head={SERVED_WORD[kind]}>
          <Tables station={station} open={open} kind={kind} />
        </td>
      ))}
      <td class="cell-width" data-head={`road, ${wheelUnit(store.units.value)}`}>
        <SheetCell
          field={ownField({ station, open }, ['width'], 'Road width')}
          form={quantityForm(LENGTH, unitFor('short', store.units.value))}
          column="width"
          figure
        />
      </td>
    </tr>
  );
}
