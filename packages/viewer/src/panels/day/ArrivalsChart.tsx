/** Arrivals over the clock, stacked by race, with what stands poured when the first runner comes. */
import { type StationDay } from '@halfcup/core';
import { type PlanRace } from '@halfcup/core/plan';
import { formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { arrivalBins, arrivalsGeometry, type ArrivalsGeometry } from './chart.ts';
import { chartText, grouped, pouredText, wholePercent } from './words.ts';
import { useWidth } from '../ui/useWidth.ts';

const HEIGHT = 250;
const TOP = 72;
const BOTTOM = HEIGHT - 22;
const FILLS = 4;
/** A glyph of the chart's words is no wider, pixels. */
const GLYPH = 6.7;

const fillOf = (race: number): string => `arrivals-bar arrivals-${race % FILLS}`;

function Grid({ geometry, width }: { readonly geometry: ArrivalsGeometry; readonly width: number }): JSX.Element {
  const { x, y } = geometry;
  const [left = 0, right = 0] = x.range();
  return (
    <g class="arrivals-axis">
      {geometry.countTicks.map((count) => (
        <g key={count}>
          <line class={count === 0 ? 'arrivals-foot' : ''} x1={left} x2={right} y1={y(count)} y2={y(count)} />
          <text x={left - 5} y={y(count) + 3.5} text-anchor="end">
            {grouped(count)}
          </text>
        </g>
      ))}
      {geometry.clockTicks.map((time) => (
        <g key={time}>
          <line class="arrivals-foot" x1={x(time)} x2={x(time)} y1={BOTTOM} y2={BOTTOM + 4} />
          <text x={Math.min(x(time), width - 16)} y={BOTTOM + 16} text-anchor="middle">
            {formatMinute(time)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** A time worth knowing: a line through the chart and its lines of words, which turn to the side that has room. */
function Moment({
  x,
  y,
  width,
  words,
  kind,
}: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly words: readonly string[];
  readonly kind: string;
}): JSX.Element {
  const ends = x > width / 2;
  // Where a line is too long for its side, it begins at the chart's edge.
  const room = (ends ? x : width - x) - 5;
  const at = (line: string): number =>
    line.length * GLYPH > room
      ? ends
        ? Math.min(width, line.length * GLYPH)
        : Math.max(0, width - line.length * GLYPH)
      : ends
        ? x - 5
        : x + 5;
  return (
    <g class={`arrivals-moment arrivals-${kind}`}>
      <line x1={x} x2={x} y1={y - 9} y2={BOTTOM} />
      {words.map((line, row) => (
        <text key={line} x={at(line)} y={y + row * 14} text-anchor={ends ? 'end' : 'start'}>
          {line}
        </text>
      ))}
    </g>
  );
}

function Drawing({
  day,
  races,
  name,
  width,
}: {
  readonly day: StationDay;
  readonly races: readonly PlanRace[];
  readonly name: string;
  readonly width: number;
}): JSX.Element {
  const bins = arrivalBins(
    day.perMinute,
    races.map(({ id }) => id),
  );
  const geometry = arrivalsGeometry(bins, races.length, day.openFrom, {
    width,
    left: 36,
    right: 8,
    top: TOP,
    bottom: BOTTOM,
  });
  const poured = pouredText(day);
  const first = day.quantiles?.first ?? null;
  return (
    <svg
      class="arrivals-chart"
      role="img"
      aria-label={chartText(name, day)}
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
    >
      <Grid geometry={geometry} width={width} />
      {geometry.outlines.map((path, race) =>
        path === '' ? null : <path key={races[race]?.id} class={fillOf(race)} d={path} />,
      )}
      {day.peak === null ? null : (
        <Moment
          x={geometry.x(day.peak.at + 30)}
          y={58}
          width={width}
          words={[`busiest minute: ${grouped(day.peak.count)}`]}
          kind="peak"
        />
      )}
      {day.openFrom === null ? null : (
        <Moment
          x={geometry.x(day.openFrom)}
          y={12}
          width={width}
          words={[`ready ${formatMinute(day.openFrom)}`]}
          kind="ready"
        />
      )}
      {first === null ? null : (
        <Moment
          x={geometry.x(first)}
          y={28}
          width={width}
          words={[`first runner ${formatMinute(first)}`, ...(poured === null ? [] : [poured])]}
          kind="first"
        />
      )}
    </svg>
  );
}

/** Each race's fill, and its share of the day's arrivals. */
function Key({ races, day }: { readonly races: readonly PlanRace[]; readonly day: StationDay }): JSX.Element {
  const arrivals = new Map(day.races.map((one) => [one.race, one.arrivals]));
  return (
    <ul class="arrivals-key">
      {races.map((race, at) =>
        (arrivals.get(race.id) ?? 0) > 0 ? (
          <li key={race.id}>
            <svg width={18} height={12} aria-hidden="true">
              <rect class={fillOf(at)} x={0.5} y={0.5} width={17} height={11} />
            </svg>
            {race.name}: {grouped(arrivals.get(race.id) ?? 0)} (
            {wholePercent((arrivals.get(race.id) ?? 0) / day.arrivals)})
          </li>
        ) : null,
      )}
    </ul>
  );
}

export function ArrivalsChart({
  day,
  races,
  name,
}: {
  readonly day: StationDay;
  readonly races: readonly PlanRace[];
  readonly name: string;
}): JSX.Element {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const { step } = arrivalBins(day.perMinute, []);
  return (
    <figure class="arrivals">
      <figcaption>
        <span class="soft">Arrivals {step === 60 ? 'per minute' : 'per five minutes'}</span>
        <Key races={races} day={day} />
      </figcaption>
      <div ref={frame} class="arrivals-frame">
        {width === 0 ? null : <Drawing day={day} races={races} name={name} width={width} />}
      </div>
    </figure>
  );
}
