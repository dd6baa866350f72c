/** Signs, tables and trash stretches of the passes in view, each with its own shape and, where there is room, its word. */
import { formOf } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { ITEM_WORD } from '../words.ts';
import { type StripItem, type StripPass, type StripScale } from './geometry.ts';

interface Props {
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
  readonly lineY: number;
  readonly words: boolean;
}

const DEPTH = 9;
const OFF = 5;
/** A word may stand this far from the middle of what it names, pixels. */
const NUDGE = 26;

function Word({ x, y, children }: { readonly x: number; readonly y: number; readonly children: string }): JSX.Element {
  return (
    <text class="strip-word" x={x} y={y} text-anchor="middle">
      {children}
    </text>
  );
}

function Table({
  item,
  scale,
  lineY,
  sign,
}: {
  readonly item: StripItem;
  readonly scale: StripScale;
  readonly lineY: number;
  readonly sign: 1 | -1;
}): JSX.Element {
  const x = scale(item.from);
  const width = Math.max(3, scale(item.to) - x);
  return (
    <rect
      class={`table-${item.kind}`}
      x={x}
      y={sign === 1 ? lineY + OFF : lineY - OFF - DEPTH}
      width={width}
      height={DEPTH}
    />
  );
}

function Sign({
  item,
  scale,
  lineY,
  sign,
}: {
  readonly item: StripItem;
  readonly scale: StripScale;
  readonly lineY: number;
  readonly sign: 1 | -1;
}): JSX.Element {
  const x = scale(item.from);
  return (
    <g class="strip-sign">
      <line x1={x} x2={x} y1={lineY} y2={lineY + sign * 9} />
      <rect x={x - 6} y={sign === 1 ? lineY + 7 : lineY - 15} width={12} height={8} />
      <line x1={x - 3} x2={x + 3} y1={lineY + sign * 11} y2={lineY + sign * 11} />
    </g>
  );
}

function Trash({
  item,
  scale,
  lineY,
  sign,
}: {
  readonly item: StripItem;
  readonly scale: StripScale;
  readonly lineY: number;
  readonly sign: 1 | -1;
}): JSX.Element {
  const y = lineY + sign * 9;
  return (
    <g class="strip-trash">
      <line x1={scale(item.from)} x2={scale(item.to)} y1={y} y2={y} />
      {item.boxes.map((measure) => (
        <rect key={measure} x={scale(measure) - 3} y={y - 3} width={6} height={6} />
      ))}
    </g>
  );
}

function wordsOf(
  items: readonly StripItem[],
  scale: StripScale,
): readonly { readonly x: number; readonly text: string }[] {
  let end = Number.NEGATIVE_INFINITY;
  return items
    .filter((item) => item.kind !== 'handOut')
    .toSorted((a, b) => a.from - b.from)
    .flatMap((item) => {
      const text = ITEM_WORD[item.kind];
      const middle = scale((item.from + item.to) / 2);
      const half = text.length * 3 + 1;
      const x = Math.max(middle, end + 7 + half);
      if (x - middle > NUDGE) return [];
      end = x + half;
      return [{ x, text }];
    });
}

export function StripItems({ passes, scale, lineY, words }: Props): JSX.Element {
  const { selected } = useStore();
  const [from = 0, to = 0] = scale.domain();
  const inView = passes.filter((pass) => pass.items.some((item) => item.to >= from && item.from <= to));
  return (
    <g aria-hidden="true">
      {inView.map((pass) => (
        <g key={`${pass.id}-${pass.measure}`} class={pass.id === selected.value ? 'strip-items picked' : 'strip-items'}>
          {pass.items
            .filter((item) => item.to >= from && item.from <= to)
            .map((item) => {
              const sign = item.side === 'left' ? -1 : 1;
              const key = `${item.kind}-${item.from}`;
              const form = formOf(item.kind);
              if (form === 'table') return <Table key={key} item={item} scale={scale} lineY={lineY} sign={sign} />;
              if (form === 'board') return <Sign key={key} item={item} scale={scale} lineY={lineY} sign={sign} />;
              return form === 'boxes' ? <Trash key={key} item={item} scale={scale} lineY={lineY} sign={sign} /> : null;
            })}
          {words
            ? wordsOf(
                pass.items.filter((item) => item.to >= from && item.from <= to),
                scale,
              ).map(({ x, text }) => (
                <Word key={text} x={x} y={lineY + (pass.side === 'left' ? -22 : 30)}>
                  {text}
                </Word>
              ))
            : null}
        </g>
      ))}
    </g>
  );
}
