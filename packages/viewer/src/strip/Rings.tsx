/** Served stations on their side of the course: a ring with the number, and from near the name. */
import { formatMeasure } from '@halfcup/core';
import type { JSX } from 'preact';
import { chooseStation } from '../state/actions.ts';
import { useStore } from '../state/store.ts';
import { sideWords } from '../words.ts';
import { LINE_Y } from './frame.ts';
import { awayOf, detail, rings, type StripPass, type StripScale } from './geometry.ts';

/** Pixels between rings on one level, and how many levels there are. */
const GAP = 22;
const LEVELS = 2;

const ringY = (pass: StripPass, level: number, room: ReturnType<typeof detail>): number => LINE_Y + awayOf(pass.side) * (room === 'none' ? 24 + level * 21 : 46);

export function Rings({ passes, scale }: { readonly passes: readonly StripPass[]; readonly scale: StripScale }): JSX.Element {
  const store = useStore();
  const selected = store.selected.value;
  const room = detail(scale);
  const press = (id: string) => (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    chooseStation(store, id);
  };
  return (
    <>
      {rings(passes, scale, GAP, LEVELS).map(({ pass, x, level }) => {
        const sign = awayOf(pass.side);
        const y = ringY(pass, level, room);
        const label = `Station ${pass.number}, ${pass.name}, ${formatMeasure(pass.measure, store.units.value)}, ${sideWords(pass.side)}`;
        return (
          <g
            key={`${pass.id}-${pass.measure}`}
            class={`strip-ring${pass.id === selected ? ' picked' : ''}${sign === 0 ? ' unclear' : ''}`}
            role="button"
            tabindex={0}
            aria-label={label}
            aria-pressed={pass.id === selected}
            onClick={() => chooseStation(store, pass.id)}
            onKeyDown={press(pass.id)}
          >
            <title>{label}</title>
            <circle class="strip-touch" cx={x} cy={y} r={12} />
            <circle cx={x} cy={y} r={9} />
            <text x={x} y={y + 4} text-anchor="middle">{pass.number}</text>
            {room === 'none' ? null : <text class="strip-name" x={x + 13} y={y + 4}>{pass.name}</text>}
          </g>
        );
      })}
    </>
  );
}

/** Drawn before the words, which cover them. */
export function Stems({ passes, scale }: { readonly passes: readonly StripPass[]; readonly scale: StripScale }): JSX.Element {
  const { selected } = useStore();
  return (
    <g class="strip-stems" aria-hidden="true">
      {rings(passes, scale, GAP, LEVELS).map(({ pass, x, level }) => (
        <line key={`${pass.id}-${pass.measure}`} class={pass.id === selected.value ? 'picked' : ''} x1={x} x2={x} y1={LINE_Y} y2={ringY(pass, level, detail(scale)) - awayOf(pass.side) * 9} />
      ))}
    </g>
  );
}
