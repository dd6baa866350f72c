/** Served stations on their side of the course: a ring with the number, and from near the name. Rings are dragged, and moved by keys. */
import { type Course } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { useStore, type Store } from '../state/store/store.ts';
import { countsOf, findingsByStation, waivedOf } from '../state/view/derive.ts';
import { countWords, farText, sideWords, waivedWords } from '../words.ts';
import { LINE_Y } from './frame.ts';
import { awayOf, detail, passKey, rings, type Ring, type StripPass, type StripScale } from './geometry.ts';
import { startDrag } from './ringDrag.ts';
import { pressOnRing } from './ringKeys.ts';
import { chooseStation } from '../state/view/choose.ts';

/** Pixels between rings on one level, and how many levels there are. */
const GAP = 22;
const LEVELS = 2;

export const ringY = (pass: StripPass, level: number, room: ReturnType<typeof detail>): number =>
  LINE_Y + awayOf(pass.side) * (room === 'none' ? 24 + level * 21 : 46);

interface Props {
  readonly course: Course;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
  /** Of the view as it is when it is asked. */
  readonly scaleNow: () => StripScale;
}

/** "1 error", "1 waived error"; nothing where nothing is found. */
function foundWords({ open }: Store, id: string): string[] {
  const findings = open.value === null ? [] : (findingsByStation(open.value).get(id) ?? []);
  return [countWords(countsOf(findings)), waivedWords(waivedOf(findings))].filter((part) => part !== '');
}

function OneRing({
  ring: { pass, x, level },
  course,
  scale,
  scaleNow,
}: Omit<Props, 'passes'> & { readonly ring: Ring }): JSX.Element {
  const store = useStore();
  const picked = pass.id === store.selected.value;
  const onTrial = pass.id === store.trial.value?.station;
  const room = detail(scale);
  const y = ringY(pass, level, room);
  const label = [
    `Station ${pass.number}`,
    pass.name,
    farText(pass.measure, store.units.value),
    sideWords(pass.side),
    ...foundWords(store, pass.id),
  ].join(', ');
  return (
    <g
      class={`strip-ring${picked ? ' picked' : ''}${onTrial ? ' trial' : ''}${awayOf(pass.side) === 0 ? ' unclear' : ''}`}
      data-station={pass.id}
      role="button"
      tabindex={0}
      aria-label={label}
      aria-pressed={picked}
      aria-describedby="strip-ring-keys"
      onClick={() => chooseStation(store, pass.id)}
      onPointerDown={(event) => startDrag({ store, course, scale: scaleNow }, pass, event)}
      onKeyDown={(event) => pressOnRing(store, course, pass, event)}
    >
      <title>{label}</title>
      <circle class="strip-touch" cx={x} cy={y} r={12} />
      <circle cx={x} cy={y} r={9} />
      <text x={x} y={y + 4} text-anchor="middle">
        {pass.number}
      </text>
      {room === 'none' && !onTrial ? null : (
        <text class="strip-name" x={x + 13} y={y + 4}>
          {pass.name}
        </text>
      )}
    </g>
  );
}

/** In the plan's order, so that a ring that passes another keeps its place in the page, and the focus. */
export function Rings({ passes, ...strip }: Props): JSX.Element {
  const drawn = rings(passes, strip.scale, GAP, LEVELS).toSorted(
    (a, b) => a.pass.number - b.pass.number || a.pass.nth - b.pass.nth,
  );
  return (
    <g class="strip-rings">
      {drawn.map((ring) => (
        <OneRing key={passKey(ring.pass)} ring={ring} {...strip} />
      ))}
    </g>
  );
}

/** Drawn before the words, which cover them. */
export function Stems({
  passes,
  scale,
}: {
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
}): JSX.Element {
  const { selected } = useStore();
  return (
    <g class="strip-stems" aria-hidden="true">
      {rings(passes, scale, GAP, LEVELS).map(({ pass, x, level }) => (
        <line
          key={passKey(pass)}
          class={pass.id === selected.value ? 'picked' : ''}
          x1={x}
          x2={x}
          y1={LINE_Y}
          y2={ringY(pass, level, detail(scale)) - awayOf(pass.side) * 9}
        />
      ))}
    </g>
  );
}
