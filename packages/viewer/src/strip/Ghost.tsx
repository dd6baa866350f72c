/** During a trial: the old place of its station, with how far it has been moved written beside it. */
import type { Course } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import { useStore } from '../state/store/store.ts';
import { lengthText } from '../words.ts';
import { awayOf, detail, type StripPass, type StripScale } from './geometry.ts';
import { LINE_Y } from './frame.ts';
import { ringY } from './Rings.tsx';
import { stripPassesOf } from './passes.ts';

interface Props {
  readonly course: Course;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
}

export function Ghost({ course, passes, scale }: Props): JSX.Element | null {
  const store = useStore();
  const trial = store.trial.value;
  if (trial === null) return null;
  const units = store.units.value;
  const old = stripPassesOf(trial.from)(course.id).filter((pass) => pass.id === trial.station && pass.served);
  const now = passes.filter((pass) => pass.id === trial.station && pass.served);
  const [low = 0, high = 0] = scale.range();
  const difference = (pass: StripPass): string => {
    const moved = now.find(({ nth }) => nth === pass.nth) ?? now[0];
    if (moved === undefined) return 'off the course';
    const by = moved.measure - pass.measure;
    const across = moved.side === pass.side || moved.side === 'unclear' ? '' : `, to the ${moved.side}`;
    const length = lengthText(Math.abs(by), units);
    return `${length.startsWith('0 ') ? '' : by < 0 ? '−' : '+'}${length}${across}`;
  };
  return (
    <g class="strip-ghost" aria-hidden="true">
      {old
        .filter((pass) => scale(pass.measure) >= low && scale(pass.measure) <= high)
        .map((pass) => {
          const x = scale(pass.measure);
          const y = ringY(pass, 0, detail(scale));
          const end = x > high - 150;
          return (
            <g key={pass.nth}>
              <line x1={x} x2={x} y1={LINE_Y} y2={y - awayOf(pass.side) * 9} />
              <circle cx={x} cy={y} r={9} />
              <text
                x={end ? x - 13 : x + 13}
                y={y + (awayOf(pass.side) === -1 ? -10 : 18)}
                text-anchor={end ? 'end' : 'start'}
              >
                {difference(pass)}
              </text>
            </g>
          );
        })}
    </g>
  );
}
