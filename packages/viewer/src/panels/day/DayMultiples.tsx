/** Every station's arrivals on one time axis, with its crew, its hours and its deliveries; choosing a row goes there. */
import type { RaceDay } from '@halfcup/core';
import { formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { numberOf } from '../../state/view/derive.ts';
import { nameOf, spanOf } from '../../state/view/clock.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { DASH, grouped } from '../../words.ts';
import { useWidth } from '../ui/useWidth.ts';
import { chooseDay } from './DayTable.tsx';
import { multiplesOf, NAMES, ROW, TOP, type DayRow, type Multiples, type Span } from './multiples.ts';
import { minuteOrDash } from './words.ts';

/** Letters of a name that have room. */
const LETTERS = 16;
const cut = (name: string): string => (name.length > LETTERS ? `${name.slice(0, LETTERS - 1)}…` : name);

const spanText = (span: Span | null | undefined): string =>
  span === null || span === undefined ? DASH : `${formatMinute(span[0])} to ${formatMinute(span[1])}`;

function Bars({ row, x }: { readonly row: DayRow; readonly x: Multiples['x'] }): JSX.Element {
  const bar = (span: Span, kind: string, y: number, height: number): JSX.Element => (
    <rect
      key={`${kind}${span[0]}`}
      class={`multiples-${kind}`}
      x={x(span[0])}
      y={y}
      width={Math.max(2, x(span[1]) - x(span[0]))}
      height={height}
    />
  );
  return (
    <>
      <path class="multiples-arrivals" d={row.arrivals} />
      {row.crew === null ? null : bar(row.crew, 'crew', 26.5, 2)}
      {row.open === null ? null : bar(row.open, 'open', 25, 5)}
      {row.drops.map((span) => bar(span, 'drop', 31.5, 4))}
      {row.collections.map((span) => bar(span, 'collect', 31.5, 4))}
      {row.resupply === null ? null : <path class="multiples-resupply" d={`M${x(row.resupply)} 30l4 6.5h-8Z`} />}
    </>
  );
}

/** The clock's time through all rows. */
function Now({ x, bottom }: { readonly x: Multiples['x']; readonly bottom: number }): JSX.Element | null {
  const time = useStore().clockTold.value;
  return time === null ? null : <line class="multiples-now" x1={x(time)} x2={x(time)} y1={TOP - 3} y2={bottom} />;
}

interface Props {
  readonly day: RaceDay;
  readonly open: OpenPlan;
}

function Drawing({ day, open, span, width }: Props & { readonly span: Span; readonly width: number }): JSX.Element {
  const store = useStore();
  const { x, ticks, rows } = multiplesOf(day, span, width);
  const { stations } = open.analysis;
  const bottom = TOP + rows.length * ROW;
  return (
    <svg width={width} height={bottom + 2} viewBox={`0 0 ${width} ${bottom + 2}`} aria-hidden="true">
      <g class="multiples-axis">
        {ticks.map((time) => (
          <g key={time}>
            <line x1={x(time)} x2={x(time)} y1={TOP} y2={bottom} />
            <text x={Math.min(x(time), width - 18)} y={12} text-anchor="middle">
              {formatMinute(time)}
            </text>
          </g>
        ))}
      </g>
      {rows.map((row, k) => {
        const station = stations.find(({ id }) => id === row.id);
        return (
          <g
            key={row.id}
            class={`multiples-row ${row.id === store.selected.value ? 'picked' : ''}`}
            data-station={row.id}
            transform={`translate(0 ${TOP + k * ROW})`}
            onClick={() => chooseDay(store, row.id)}
          >
            <rect class="multiples-ground" width={width} height={ROW} />
            <text x={14} y={22}>
              <tspan class="soft">{station === undefined ? '' : numberOf(station)}</tspan>
              <tspan dx={6}>{cut(station?.name ?? row.id)}</tspan>
            </text>
            <Bars row={row} x={x} />
          </g>
        );
      })}
      <Now x={x} bottom={bottom} />
    </svg>
  );
}

const KEY = [
  ['arrivals', 'Arrivals'],
  ['crew', 'Crew there'],
  ['open', 'Open'],
  ['drop', 'Drop-off'],
  ['collect', 'Collection'],
  ['resupply', 'Second delivery, if runners drink half as much again'],
] as const;

const Key = ({ most }: Pick<Multiples, 'most'>): JSX.Element => (
  <ul class="multiples-key">
    {KEY.map(([kind, word]) => (
      <li key={kind}>
        <svg width={14} height={12} aria-hidden="true">
          {kind === 'resupply' ? (
            <path class="multiples-resupply" d="M7 2l4 7h-8Z" />
          ) : (
            <rect
              class={`multiples-${kind}`}
              x={0.6}
              y={kind === 'crew' ? 5 : 3}
              width={12.8}
              height={kind === 'crew' ? 2 : 6}
            />
          )}
        </svg>
        {word}
        {kind === 'arrivals' ? ` (tallest: ${grouped(most)} in five minutes)` : ''}
      </li>
    ))}
  </ul>
);

/** The same in figures. */
const Table = ({ day, open, rows }: Props & Pick<Multiples, 'rows'>): JSX.Element => (
  <details>
    <summary>As a table</summary>
    <table class="items multiples-table">
      <thead>
        <tr>
          {['Station', 'Arrivals', 'Crew', 'Open', 'Second delivery', 'Collected'].map((head) => (
            <th key={head} scope="col" class="left">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <th scope="row" class="left">
              {nameOf(open.analysis.stations, row.id)}
            </th>
            <td>{grouped(day.stations.find(({ id }) => id === row.id)?.arrivals ?? 0)}</td>
            <td>{spanText(row.crew)}</td>
            <td>{spanText(row.open)}</td>
            <td>{minuteOrDash(row.resupply)}</td>
            <td>{spanText(row.collections[0])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);

export function DayMultiples({ day, open }: Props): JSX.Element | null {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const { span } = spanOf(open.analysis);
  if (span === null) return null;
  const { rows, most } = multiplesOf(day, span, Math.max(width, NAMES + 2));
  return (
    <div class="multiples">
      <Key most={most} />
      <div ref={frame} class="multiples-frame">
        {width === 0 ? null : <Drawing day={day} open={open} span={span} width={width} />}
      </div>
      <Table day={day} open={open} rows={rows} />
    </div>
  );
}
