/** The lead direction's items in running order, on their side of the road; spaced to be read, not to scale. */
import { type Item, type LaidDirection } from '@halfcup/core';
import { formOf } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { isTable } from '../../state/view/derive.ts';
import { useStore } from '../../state/store/store.ts';
import { compassWord, ITEM_WORD, lengthText } from '../../words.ts';

const WIDTH = 308;
const ROAD = 26;

function Glyph({ item, x, y }: { readonly item: Item; readonly x: number; readonly y: number }): JSX.Element | null {
  const form = formOf(item.kind);
  if (form === 'board') {
    return (
      <g class="strip-sign">
        <line x1={x} x2={x} y1={y + 2} y2={y + 12} />
        <rect x={x - 7} y={y - 6} width={14} height={9} />
        <line x1={x - 4} x2={x + 4} y1={y - 1.5} y2={y - 1.5} />
      </g>
    );
  }
  if (form === 'boxes') {
    return (
      <g class="strip-trash">
        <line x1={x - 18} x2={x + 18} y1={y} y2={y} />
        {[-15, 0, 15].map((at) => (
          <rect key={at} x={x + at - 4} y={y - 4} width={8} height={8} />
        ))}
      </g>
    );
  }
  return <rect class={`table-${item.kind}`} x={x - 17} y={y - 5} width={34} height={10} />;
}

interface Span {
  readonly from: number;
  readonly to: number;
  /** Along the course, metres. */
  readonly length: number;
}

/** From the sign to the first table, and from the last table to the first box. */
function spans(items: readonly Item[], slot: number): Span[] {
  const tables = items.map((item, index) => ({ item, index })).filter(({ item }) => isTable(item.kind));
  const [first] = tables;
  const last = tables.at(-1);
  if (first === undefined || last === undefined) return [];
  const middle = (index: number): number => Math.round(slot * (index + 0.5));
  const sign = items.findIndex((item) => item.kind === 'sign');
  const trash = items.findIndex((item) => item.kind === 'trash');
  const ahead =
    sign === -1
      ? []
      : [{ from: middle(sign), to: middle(first.index) - 17, length: first.item.from - (items[sign]?.to ?? 0) }];
  const after =
    trash === -1
      ? []
      : [{ from: middle(last.index) + 17, to: middle(trash) - 15, length: (items[trash]?.from ?? 0) - last.item.to }];
  return [...ahead, ...after];
}

export function StationSketch({ direction }: { readonly direction: LaidDirection }): JSX.Element | null {
  const { units } = useStore();
  const items = direction.items.filter((item) => formOf(item.kind) !== 'line').toSorted((a, b) => a.from - b.from);
  if (items.length === 0 || direction.side === 'unclear') return null;
  const left = direction.side === 'left';
  const roadY = left ? 72 : 20;
  const glyphY = left ? 56 : 64;
  const wordY = left ? 38 : 86;
  const spanY = left ? 20 : 98;
  const slot = WIDTH / items.length;
  return (
    <svg
      class="sketch"
      width={WIDTH}
      height={116}
      viewBox={`0 0 ${WIDTH} 116`}
      role="img"
      aria-label={`Order of what stands on the ${direction.side}-hand side: ${items.map((item) => ITEM_WORD[item.kind]).join(', ')}`}
    >
      <rect class="sketch-road" x={0} y={roadY} width={WIDTH} height={ROAD} />
      <text class="sketch-note" x={4} y={left ? 111 : 14}>
        Runners come from the {compassWord(direction.azimuthDeg + 180)}
      </text>
      <path class="sketch-run" d={`M8 ${roadY + 13}h${WIDTH - 22}`} />
      <path class="sketch-arrow" d={`M${WIDTH - 20} ${roadY + 8}l8 5l-8 5`} />
      {items.map((item, index) => {
        const x = slot * (index + 0.5);
        return (
          <g key={item.kind}>
            <Glyph item={item} x={x} y={glyphY} />
            <text class="sketch-word" x={x} y={wordY} text-anchor="middle">
              {ITEM_WORD[item.kind]}
            </text>
          </g>
        );
      })}
      {spans(items, slot).map(({ from, to, length }) => (
        <g key={from}>
          <path class="sketch-span" d={`M${from} ${spanY - 3}v6m0 -3H${to}m0 -3v6`} />
          <text class="sketch-word" x={(from + to) / 2} y={left ? spanY - 5 : spanY + 13} text-anchor="middle">
            {lengthText(length, units.value)}
          </text>
        </g>
      ))}
    </svg>
  );
}
