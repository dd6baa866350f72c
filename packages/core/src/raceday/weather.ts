/** What is to be said of the weather that a plan expects: the level of its hottest hour, and a strong wind. */
import type { Finding } from '../finding.ts';
import type { Plan } from '../plan/plan.ts';
import { WEATHER_SOURCE, WINDY, hottestOf, strongestOf, weatherHours } from '../plan/weather.ts';
import { racedayFinding } from './racedayFinding.ts';

/** Notes, and a warning at the level at which races are stopped; none where the plan has no weather. */
export function weatherFindings({ weather = [] }: Plan): Finding[] {
  const hours = weatherHours(weather);
  const [heat, wind] = [hottestOf(hours), strongestOf(hours)];
  const found: Finding[] = [];
  if (heat !== null) {
    const { level, at, celsius, by, index } = heat;
    const severity = level === 'black' ? 'warning' : 'note';
    const facts = { severity, where: { path: `/weather/${index}` }, measured: celsius, unit: '°C' } as const;
    found.push(racedayFinding('weather-level', { level, at, celsius, by }, { ...facts, source: WEATHER_SOURCE }));
  }
  if (wind !== null) {
    const where = { path: `/weather/${wind.index}` };
    const facts = { severity: 'note', where, measured: wind.kmh, limit: WINDY, unit: 'km/h' } as const;
    found.push(racedayFinding('weather-wind', { at: wind.at, kmh: wind.kmh }, facts));
  }
  return found;
}
