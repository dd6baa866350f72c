/** The weather on the papers, as a language fills it in, and how temperatures and winds are written. */
import type { WeatherBy, WeatherLevel } from '../kinds.ts';
import type { UnitSystem } from '../units.ts';

/** Words for the captain on the weather. They say less than a practitioner would, and who decides. */
export interface WeatherText {
  readonly title: string;
  readonly about: string;
  readonly hours: readonly [time: string, temperature: string, wind: string, level: string];
  readonly level: string;
  readonly when: string;
  readonly doesTitle: string;
  /** On the captain's sheet: the level expected, and that there is a sheet with the rest. */
  readonly short: (level: string, time: string) => string;
  readonly shortThunder: string;
  /** What the levels are called, as they stand inside a sentence. */
  readonly levels: Readonly<Record<WeatherLevel, string>>;
  /** What was measured or worked out, before the temperature. */
  readonly measured: Readonly<Record<WeatherBy, string>>;
  /** Bounds of a level. */
  readonly under: (temperature: string) => string;
  readonly between: (from: string, to: string) => string;
  readonly over: (temperature: string) => string;
  /** What a captain does at each level. */
  readonly does: Readonly<Record<WeatherLevel, string>>;
  /** Who decides on the level and what follows. */
  readonly decides: string;
  readonly windTitle: (speed: string) => string;
  readonly wind: readonly string[];
  readonly thunderTitle: string;
  readonly thunder: readonly string[];
}

/** "24 °C", "75 °F"; a tenth where it is not whole. */
export const temperatureText = (celsius: number, units: UnitSystem): string =>
  units === 'metric' ? `${Number(celsius.toFixed(1))} °C` : `${Math.round(celsius * 1.8 + 32)} °F`;

/** "45 km/h", "28 mph". */
export const windText = (kmh: number, units: UnitSystem): string =>
  units === 'metric' ? `${Math.round(kmh)} km/h` : `${Math.round(kmh / 1.609344)} mph`;
