/** The clock below the strip: its slider, and in words what strip and map show at its time. */
import { formatMinute } from '@halfcup/core/units';
import type { Units } from '@halfcup/core/plan';
import type { CrowdAlong, StationPhase } from '@halfcup/core/raceday';
import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { PhaseIcon } from '../panels/ui/PhaseMark.tsx';
import { COLOURS } from '../map/layers/crowd.ts';
import { useStore, type OpenPlan } from '../state/store/store.ts';
import { momentTold, nameOf, setClock, spanOf, turnOff, type Moment, type Span } from '../state/view/clock.ts';
import { farText, grouped, PHASE_WORD } from '../words.ts';
import { play, SPEEDS, useClock } from './useClock.ts';

const PHASES: readonly StationPhase[] = ['before', 'settingUp', 'ready', 'open', 'breakingDown', 'packed'];
const MINUTE = 60;
const PAGE = 15 * MINUTE;

function Slider({ span }: { readonly span: Span }): JSX.Element {
  const store = useStore();
  const time = store.clock.value ?? span[0];
  const key = (event: KeyboardEvent): void => {
    const pages: Readonly<Record<string, number>> = { PageUp: PAGE, PageDown: -PAGE };
    const page = pages[event.key];
    if (event.key === ' ') togglePlay();
    else if (page !== undefined) setClock(store, time + page);
    else return;
    event.preventDefault();
  };
  const togglePlay = (): void => (store.playing.value ? void (store.playing.value = false) : play(store));
  return (
    <input
      type="range"
      class="clock-slider"
      aria-label="Time of race day"
      aria-describedby="strip-clock-keys"
      aria-valuetext={formatMinute(time)}
      min={span[0]}
      max={span[1]}
      step={MINUTE}
      value={Math.floor(time / MINUTE) * MINUTE}
      onInput={(event) => setClock(store, Number(event.currentTarget.value))}
      onKeyDown={key}
    />
  );
}

/** "1,080 on the road, at most 64 in 100 m at 5.30 km, 117 finished"; those of whom there is none are left out. */
function runnersText({ onRoad, waiting, finished, stopped, runners, from, every }: CrowdAlong, units: Units): string {
  const most = runners.reduce((high, count) => Math.max(high, count), 0);
  const middle = from + (runners.indexOf(most) + 0.5) * every;
  return [
    `${grouped(onRoad)} on the road`,
    ...(most === 0 ? [] : [`at most ${grouped(most)} in 100 m at ${farText(middle, units)}`]),
    ...(waiting === 0 ? [] : [`${grouped(waiting)} not started`]),
    ...(finished === 0 ? [] : [`${grouped(finished)} finished`]),
    ...(stopped === 0 ? [] : [`${grouped(stopped)} stopped by the sweep`]),
  ].join(', ');
}

function Runners({ open, moment }: { readonly open: OpenPlan; readonly moment: Moment }): JSX.Element {
  const { units } = useStore();
  const { plan } = open.analysis;
  return (
    <ul class="clock-runners">
      {moment.crowds.map((crowd, k) => (
        <li key={crowd.race}>
          <svg width={18} height={10} aria-hidden="true">
            <rect class={`crowd-${k % COLOURS}`} y={1} width={18} height={8} />
          </svg>
          <span>
            <b>{nameOf(plan.races, crowd.race)}</b>: {runnersText(crowd, units.value)}
          </span>
        </li>
      ))}
    </ul>
  );
}

const Stations = ({ states }: Moment): JSX.Element => (
  <ul class="clock-stations" aria-label="Stations">
    {PHASES.map((phase) => {
      const count = states.filter((state) => state.phase === phase).length;
      return count === 0 ? null : (
        <li key={phase}>
          <PhaseIcon phase={phase} /> {count} {PHASE_WORD[phase]}
        </li>
      );
    })}
  </ul>
);

function Movers({ open, moment }: { readonly open: OpenPlan; readonly moment: Moment }): JSX.Element {
  const { units } = useStore();
  const { plan, stations } = open.analysis;
  const texts = [
    ...moment.sweeps.map(
      ({ race, measure }) => `Sweep of ${nameOf(plan.races, race)} at ${farText(measure, units.value)}`,
    ),
    ...moment.vehicles.map(({ vehicle, kind, at, next, measure }) => {
      const what = `${nameOf(plan.vehicles, vehicle)} (${kind === 'drop' ? 'drop-off' : 'collection'})`;
      return at === null
        ? `${what} at ${farText(measure, units.value)}, on the way to ${nameOf(stations, next)}`
        : `${what} at ${nameOf(stations, at)}`;
    }),
  ];
  return (
    <p class="soft clock-movers">{texts.length === 0 ? 'No sweep and no vehicle on the road' : texts.join(' · ')}</p>
  );
}

function Told({ open }: { readonly open: OpenPlan }): JSX.Element | null {
  const moment = momentTold(useStore());
  if (moment === null) return null;
  return (
    <div class="clock-told">
      <Runners open={open} moment={moment} />
      <Stations {...moment} />
      <Movers open={open} moment={moment} />
    </div>
  );
}

function Running({ open, span }: { readonly open: OpenPlan; readonly span: Span }): JSX.Element {
  const store = useStore();
  const [speed, setSpeed] = useState<number>(SPEEDS[1]);
  const now = useRef<number>(speed);
  now.current = speed;
  useClock(store, () => now.current);
  const time = useComputed(() => formatMinute(store.clock.value ?? span[0]));
  const playing = store.playing.value;
  return (
    <>
      <button
        type="button"
        class="clock-play"
        aria-label={playing ? 'Pause the clock' : 'Play the clock'}
        onClick={() => (playing ? void (store.playing.value = false) : play(store))}
      >
        {playing ? 'Pause' : 'Play'}
      </button>
      <output class="clock-time">{time}</output>
      <span class="clock-track">
        <span class="soft">{formatMinute(span[0])}</span>
        <Slider span={span} />
        <span class="soft">{formatMinute(span[1])}</span>
      </span>
      <label class="field">
        <span class="soft">Minutes a second</span>
        <select value={speed} onChange={(event) => setSpeed(Number(event.currentTarget.value))}>
          {SPEEDS.map((one) => (
            <option key={one} value={one}>
              {one / MINUTE}
            </option>
          ))}
        </select>
      </label>
      <Told open={open} />
    </>
  );
}

/** Nothing where the clock is off. */
export function ClockBar({ open }: { readonly open: OpenPlan }): JSX.Element | null {
  const store = useStore();
  const on = useComputed(() => store.clock.value !== null).value;
  const { span } = spanOf(open.analysis);
  // An edit may have moved race day, or taken it away.
  useEffect(() => {
    const time = store.clock.value;
    if (time === null) return;
    if (span === null) turnOff(store);
    else setClock(store, time);
  }, [span?.[0], span?.[1]]);
  return span === null || !on ? null : (
    <section class="clock" aria-label="Race-day clock">
      <Running open={open} span={span} />
    </section>
  );
}
