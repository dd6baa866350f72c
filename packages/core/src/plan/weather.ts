/**
 * The weather expected on the day, and the level that it stands for. Levels: position stand of the American College of
 * Sports Medicine of 1996, as quoted by Road Race Management (quoted, not read): wet-bulb globe temperature (WBGT) under
 * 10 °C white, under 18 green, to 22 yellow, 23 to 28 red, over 28 black. The medical director decides, not this table.
 * WBGT from air and humidity: approximation of the Australian Bureau of Meteorology for a sunny day of light wind (from memory).
 */
import type { WeatherBy, WeatherLevel } from '../kinds.ts';
import type { Heat } from './rules.ts';

/** What is expected from a time of the day until the next one given. */
export interface PlanWeather {
  /** Seconds after midnight. */
  readonly at: number;
  /** Wet-bulb globe temperature, °C. */
  readonly wbgtC?: number;
  /** Of the air, °C. */
  readonly airC?: number;
  /** Relative humidity of the air, 0 to 1. */
  readonly humidity?: number;
  /** Speed of the wind, km/h. */
  readonly windKmh?: number;
}

export const WEATHER_SOURCE = 'ACSM position stand 1996, as quoted by Road Race Management (cited second-hand)';

/** °C of WBGT from which green, yellow and red begin; black is above the last. */
export const LEVEL_STEPS = { green: 10, yellow: 18, red: 23, black: 28 } as const;

/** The heat of the take rates at each level: an assumption. */
const HEAT: Readonly<Record<WeatherLevel, Heat>> = {
  white: 'cool',
  green: 'cool',
  yellow: 'warm',
  red: 'hot',
  black: 'hot',
};

/** From this wind on cups need weights, km/h: an assumption, near where the Beaufort scale's fresh breeze begins. */
export const WINDY = 30;

/** The hottest that is expected. */
export interface WeatherHeat {
  readonly at: number;
  /** °C. */
  readonly celsius: number;
  readonly by: WeatherBy;
  readonly level: WeatherLevel;
  /** Its entry in the plan. */
  readonly index: number;
}

/** The strongest wind, where it is strong enough to matter. */
export interface WeatherWind {
  readonly at: number;
  readonly kmh: number;
  readonly index: number;
}

/** The level of a wet-bulb globe temperature, °C. */
export function levelOf(celsius: number): WeatherLevel {
  if (celsius > LEVEL_STEPS.black) return 'black';
  if (celsius >= LEVEL_STEPS.red) return 'red';
  if (celsius >= LEVEL_STEPS.yellow) return 'yellow';
  return celsius >= LEVEL_STEPS.green ? 'green' : 'white';
}

/** WBGT of air in °C and its relative humidity (0 to 1). */
export function wbgtOfAir(airC: number, humidity: number): number {
  const vapour = humidity * 6.105 * Math.exp((17.27 * airC) / (237.7 + airC));
  return 0.567 * airC + 0.393 * vapour + 3.94;
}

function temperatureOf({
  wbgtC,
  airC,
  humidity,
}: PlanWeather): { readonly celsius: number; readonly by: WeatherBy } | null {
  if (wbgtC !== undefined) return { celsius: wbgtC, by: 'wbgt' };
  if (airC === undefined) return null;
  return humidity === undefined ? { celsius: airC, by: 'air' } : { celsius: wbgtOfAir(airC, humidity), by: 'humidity' };
}

/** An hour with what it stands for, and its entry in the plan; `heat` is `null` where no temperature is given. */
export interface WeatherHour extends PlanWeather {
  readonly heat: WeatherHeat | null;
  readonly index: number;
}

/** The hours in the order of the day. */
export const weatherHours = (weather: readonly PlanWeather[]): readonly WeatherHour[] =>
  weather
    .map((hour, index): WeatherHour => {
      const found = temperatureOf(hour);
      const heat = found === null ? null : { at: hour.at, ...found, level: levelOf(found.celsius), index };
      return { ...hour, heat, index };
    })
    .sort((a, b) => a.at - b.at || a.index - b.index);

/** Hours that hold at some time between two, both included; all of them where none does. */
export function hoursWithin(hours: readonly WeatherHour[], from: number, until: number): readonly WeatherHour[] {
  const held = hours.filter(({ at }, k) => at <= until && (hours[k + 1]?.at ?? Infinity) > from);
  return held.length === 0 ? hours : held;
}

/** The hottest of some hours, the first of those alike; `null` where no temperature is given. */
export const hottestOf = (hours: readonly WeatherHour[]): WeatherHeat | null =>
  hours.reduce<WeatherHeat | null>(
    (most, { heat }) => (heat !== null && (most === null || heat.celsius > most.celsius) ? heat : most),
    null,
  );

/** The strongest wind of some hours, the first of those alike; `null` where none is strong. */
export const strongestOf = (hours: readonly WeatherHour[]): WeatherWind | null =>
  hours.reduce<WeatherWind | null>(
    (most, { at, windKmh = 0, index }) =>
      windKmh >= WINDY && (most === null || windKmh > most.kmh) ? { at, kmh: windKmh, index } : most,
    null,
  );

/** The heat that the weather stands for; `undefined` where it says nothing of it. */
export function heatOfWeather(weather: readonly PlanWeather[] | undefined): Heat | undefined {
  const most = hottestOf(weatherHours(weather ?? []));
  return most === null ? undefined : HEAT[most.level];
}
