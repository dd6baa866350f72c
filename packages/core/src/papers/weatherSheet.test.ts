import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { Plan } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { captainSheet } from './captain.ts';
import { papersOf } from './papers.ts';
import { weatherLine, weatherSheetBody } from './weatherSheet.ts';

const withWeather = (weather: Plan['weather'], keys: Partial<Plan> = {}): Analysis =>
  analysisOf(STRAIGHT, [AT_1500], { races: [runners(500)], ...(weather === undefined ? {} : { weather }), ...keys });
const plain = (html: string): string => html.replaceAll(/<[^>]*>/gu, ' ').replaceAll(/\s+/gu, ' ');
const sheetOf = (analysis: Analysis, text = en): string =>
  plain(weatherSheetBody(analysis, { text, paper: 'a4', printedAt: '2027-09-01' }).html);
const lineOf = (analysis: Analysis, text = en): string =>
  plain(weatherLine(analysis, analysis.stations[0]!, text).html).trim();
const day = [
  { at: 0, wbgtC: 12 },
  { at: 86_000, wbgtC: 30, windKmh: 45 },
];
const OPTIONS = { paper: 'a4', printedAt: '2027-09-01' } as const;

describe('the weather', () => {
  it('is on no paper where the plan gives none', () => {
    const analysis = withWeather(undefined);
    expect(captainSheet(analysis, analysis.stations[0]!, OPTIONS)).not.toContain('class="weather"');
    expect(papersOf(analysis, OPTIONS).map(({ name }) => name)).not.toContain('weather.html');
    expect(papersOf(withWeather(day), OPTIONS).map(({ name }) => name)).toContain('weather.html');
  });

  it('is one line on the captain’s sheet: the level while the station is open, and thunder', () => {
    expect(lineOf(withWeather(day))).toBe(
      'Weather: level green expected at 00:00; see the weather sheet. Thunder: everybody inside at once.',
    );
    expect(lineOf(withWeather([{ at: 0, windKmh: 50 }]))).toBe('Thunder: everybody inside at once.');
    expect(lineOf(withWeather(day), es)).toContain('Tiempo: nivel verde previsto a las 00:00');
  });

  it('has a sheet that says what is expected, what to do at each level, and who decides', () => {
    const says = sheetOf(withWeather(day));
    for (const words of [
      '23:53 WBGT 30 °C 45 km/h black',
      'White under 10 °C',
      'Green 10 to under 18 °C As planned.',
      'Yellow 18 to under 23 °C',
      'Red 23 to 28 °C Call race control for ice',
      'Black ◀ over 28 °C The race may be shortened or stopped',
      'The medical director decides',
      'as quoted by Road Race Management',
      'Do not wait for a call',
      'Wind of 30 km/h or more One layer of cups only',
    ])
      expect(says).toContain(words);
    expect(sheetOf(withWeather(day), es)).toContain('La dirección médica decide');
  });

  it('is in the plan’s units, and says where air stands for WBGT', () => {
    const windy = [
      { at: 0, airC: 25, windKmh: 45 },
      { at: 3600, airC: 30, humidity: 0.6 },
    ];
    expect(sheetOf(withWeather(windy))).toContain('00:00 Air (not WBGT) 25 °C 45 km/h red');
    expect(sheetOf(withWeather(windy))).toContain('01:00 WBGT of about 30.9 °C – black');
    const imperial = sheetOf(withWeather(windy, { units: 'imperial' }));
    expect(imperial).toContain('Air (not WBGT) 77 °F 28 mph red');
    expect(imperial).toContain('Red 73 to 82 °F');
  });
});
