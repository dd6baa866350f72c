/** The weather sheet: what is expected, what a station does at each level, in wind and in thunder, and who decides. One page for all captains. */
import type { Analysis } from '../analyse.ts';
import type { StationLayout } from '../layout/layout.ts';
import { WEATHER_LEVELS, type WeatherLevel } from '../kinds.ts';
import type { Units } from '../plan/plan.ts';
import {
  LEVEL_STEPS,
  WEATHER_SOURCE,
  WINDY,
  type WeatherHour,
  hottestOf,
  hoursWithin,
  weatherHours,
} from '../plan/weather.ts';
import { formatMinute } from '../format.ts';
import { sourceText } from '../text/checkTexts.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type WeatherText, temperatureText, windText } from '../text/weatherText.ts';
import { dayOf } from './captainFacts.ts';
import { type Html, NONE, html, table } from './html.ts';
import { type Sheet, listHead } from './sheet.ts';

/** On the captain's sheet: the level expected while the station is there, and thunder. Nothing where the plan has no weather. */
export function weatherLine({ plan, day }: Analysis, station: StationLayout, { weather }: SheetText): Html {
  const all = weatherHours(plan.weather ?? []);
  if (all.length === 0) return NONE;
  const own = dayOf({ day }, station);
  const heat = hottestOf(own === null ? all : hoursWithin(all, own.crewAt!, own.openUntil!));
  const expected = heat === null ? '' : `${weather.short(weather.levels[heat.level], formatMinute(heat.at))} `;
  return html`<span class="weather" data-level="${heat?.level ?? ''}">${expected}<b>${weather.shortThunder}</b></span>`;
}

/** The body of the sheet; of a plan that has weather. */
export function weatherSheetBody({ plan }: Analysis, sheet: Sheet): Html {
  const { text } = sheet;
  const { weather } = text;
  const { units } = plan;
  const hours = weatherHours(plan.weather ?? []);
  const most = hottestOf(hours)?.level;
  const list = (lines: readonly string[]): Html => html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;
  return html`${listHead(weather.title, plan, sheet)}
<p>${weather.about}</p>
${table(
  [...weather.hours],
  hours.map((hour) => hourRow(hour, units, weather)),
  'hours',
)}
<p class="decides"><b>${weather.decides}</b></p>
${table(
  [weather.level, weather.when, weather.doesTitle],
  WEATHER_LEVELS.map((level) => [
    html`<b data-level="${level}">${capital(weather.levels[level])}${level === most ? ' ◀' : ''}</b>`,
    boundsText(level, units, weather),
    weather.does[level],
  ]),
  'levels',
)}
<p class="small">${sourceText(WEATHER_SOURCE, text.language)}</p>
<div class="two"><section class="block"><h2>${weather.thunderTitle}</h2>${list(weather.thunder)}</section>
<section class="block"><h2>${weather.windTitle(windText(WINDY, units))}</h2>${list(weather.wind)}</section></div>`;
}

function hourRow({ at, windKmh, heat }: WeatherHour, units: Units, weather: WeatherText): (string | Html)[] {
  return [
    formatMinute(at),
    heat === null ? '–' : `${weather.measured[heat.by]} ${temperatureText(heat.celsius, units)}`,
    windKmh === undefined ? '–' : windText(windKmh, units),
    heat === null ? '–' : html`<b>${weather.levels[heat.level]}</b>`,
  ];
}

const capital = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** "23 to 28 °C". */
function boundsText(level: WeatherLevel, units: Units, { under, between, over }: WeatherText): string {
  const { green, yellow, red, black } = LEVEL_STEPS;
  const at = (celsius: number): string => temperatureText(celsius, units);
  const from = (celsius: number): string => at(celsius).replace(/ .*$/u, '');
  const bounds: Readonly<Record<WeatherLevel, string>> = {
    white: under(at(green)),
    green: between(from(green), under(at(yellow))),
    yellow: between(from(yellow), under(at(red))),
    red: between(from(red), at(black)),
    black: over(at(black)),
  };
  return bounds[level];
}

export const WEATHER_STYLE = `
.levels td, .hours td { padding: 1mm 3mm 1mm 0; vertical-align: top; }
.levels th:nth-child(1) { width: 22mm; }
.levels th:nth-child(2) { width: 38mm; }
.decides { border: 1.5pt solid #000; padding: 1.5mm 2.5mm; margin: 3mm 0; }
.two { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8mm; margin-top: 2mm; }
`;
