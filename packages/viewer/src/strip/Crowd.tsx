/** Race day at the clock's time along the course: what its stations do, how thick the runners of each race are, sweep and vehicles. */
import type { Course } from '@halfcup/core/stages';
import type { CrowdAlong } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { COLOURS } from '../map/layers/crowd.ts';
import { useStore, type OpenPlan } from '../state/store/store.ts';
import { momentTold, nameOf, type Moment } from '../state/view/clock.ts';
import { PHASE_WORD } from '../words.ts';
import { PhaseMark } from '../panels/ui/PhaseMark.tsx';
import { bars, CROWD_TICKS, heightOf } from './crowdBars.ts';
import { CROWD, PHASES, VEHICLES } from './frame.ts';
import type { StripPass, StripScale } from './geometry.ts';

/** Room that a word beside a mark takes, pixels. */
const WORD = 76;

/** Races with runners on a course. */
const racesOn = ({ analysis }: OpenPlan, course: string): number =>
  analysis.plan.races.filter((race) => race.course === course && race.waves.length > 0).length;

/** What the clock adds to the strip of a course, pixels. */
export const crowdHeight = (open: OpenPlan, course: string): number =>
  PHASES + racesOn(open, course) * CROWD + ((open.analysis.day?.runs.length ?? 0) > 0 ? VEHICLES : 0);

interface Props {
  readonly course: Course;
  readonly open: OpenPlan;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
  /** Top, pixels. */
  readonly y: number;
}

/** At each served pass what its station does, in words where there is room. */
function Phases({
  passes,
  scale,
  y,
  moment,
}: Omit<Props, 'course' | 'open'> & { readonly moment: Moment }): JSX.Element {
  const [low = 0, high = 1] = scale.range();
  const seen = passes
    .filter(({ served, measure }) => served && scale(measure) >= low && scale(measure) <= high)
    .map((pass) => ({ x: scale(pass.measure), state: moment.states.find(({ station }) => station === pass.id), pass }));
  return (
    <g class="clock-phases">
      {seen.map(({ x, state, pass }, k) =>
        state === undefined ? null : (
          <g key={`${pass.id}-${pass.nth}`} transform={`translate(${(x - 7).toFixed(1)} ${y + 1})`}>
            <PhaseMark phase={state.phase} />
            {(seen[k + 1]?.x ?? high + 30) - x > WORD ? (
              <text x={18} y={11}>
                {PHASE_WORD[state.phase]}
              </text>
            ) : null}
          </g>
        ),
      )}
    </g>
  );
}

function Band({
  crowd,
  colour,
  name,
  scale,
  y,
}: {
  readonly crowd: CrowdAlong;
  readonly colour: number;
  readonly name: string;
  readonly scale: StripScale;
  readonly y: number;
}): JSX.Element {
  const [low = 0, high = 1] = scale.range();
  const foot = y + CROWD - 3;
  return (
    <g class="clock-band">
      {CROWD_TICKS.map((count) => (
        <g key={count}>
          <line x1={low} x2={high} y1={foot - heightOf(count)} y2={foot - heightOf(count)} />
          <text class="clock-tick" x={high + 4} y={foot - heightOf(count) + 3}>
            {count}
          </text>
        </g>
      ))}
      <path class={`crowd-${colour}`} d={bars(crowd, scale, foot)} />
      <line class="clock-foot" x1={low} x2={high} y1={foot} y2={foot} />
      <text class="clock-name" x={low + 2} y={y + 9}>
        {name}
      </text>
    </g>
  );
}

/** A thing that moves along the course, with its name on the side that has room. */
function Mover({
  x,
  y,
  text,
  kind,
  high,
}: {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly kind: 'sweep' | 'drop' | 'collect';
  readonly high: number;
}): JSX.Element {
  const ends = x > high - 160;
  return (
    <g class={`clock-mover clock-mover-${kind}`}>
      {kind === 'sweep' ? <path d={`M${x} ${y - 3}v${CROWD}`} /> : <rect x={x - 5} y={y - 8} width={10} height={8} />}
      <text x={ends ? x - 8 : x + 8} y={kind === 'sweep' ? y + CROWD - 9 : y} text-anchor={ends ? 'end' : 'start'}>
        {text}
      </text>
    </g>
  );
}

export function Crowd({ course, open, passes, scale, y }: Props): JSX.Element | null {
  const moment = momentTold(useStore());
  if (moment === null) return null;
  const [low = 0, high = 1] = scale.range();
  const { plan } = open.analysis;
  const own = moment.crowds.flatMap((crowd, k) => (crowd.course === course.id ? [{ crowd, colour: k % COLOURS }] : []));
  const bandY = (k: number): number => y + PHASES + k * CROWD;
  const inView = (measure: number): boolean => scale(measure) >= low - 1 && scale(measure) <= high + 1;
  const vehicles = moment.vehicles.filter((one) => one.course === course.id && inView(one.measure));
  return (
    <g class="clock-strip" aria-hidden="true">
      <Phases passes={passes} scale={scale} y={y} moment={moment} />
      {own.map(({ crowd, colour }, k) => (
        <Band
          key={crowd.race}
          crowd={crowd}
          colour={colour}
          name={`${nameOf(plan.races, crowd.race)}, runners per 100 m`}
          scale={scale}
          y={bandY(k)}
        />
      ))}
      {moment.sweeps
        .filter((sweep) => sweep.course === course.id && inView(sweep.measure))
        .map((sweep) => (
          <Mover
            key={sweep.race}
            kind="sweep"
            text="sweep"
            x={scale(sweep.measure)}
            y={bandY(own.findIndex(({ crowd }) => crowd.race === sweep.race)) + 4}
            high={high}
          />
        ))}
      {vehicles.map((one) => (
        <Mover
          key={`${one.kind} ${one.vehicle}`}
          kind={one.kind}
          text={`${nameOf(plan.vehicles, one.vehicle)}, ${one.kind === 'drop' ? 'drop-off' : 'collection'}`}
          x={scale(one.measure)}
          y={bandY(own.length) + 12}
          high={high}
        />
      ))}
    </g>
  );
}
