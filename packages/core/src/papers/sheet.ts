/** What the papers that are lists share: what they are printed with, how a station is called, how a position is written. */
import type { LonLat } from '../finding.ts';
import { type StationLayout, numberOf } from '../layout/layout.ts';
import type { Plan } from '../plan/plan.ts';
import { formatMass, formatVolume } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { headHtml } from './frame.ts';
import { type Html, html, said } from './html.ts';
import type { Paper } from './frameStyle.ts';

/** What the body of a paper is made with, besides the analysis. */
export interface Sheet {
  readonly text: SheetText;
  readonly paper: Paper;
  readonly printedAt: string;
}

/** "Station 3 · Wrack Fork". */
export const stationTitle = (station: Pick<StationLayout, 'index' | 'name'>, { frame }: SheetText): Html =>
  html`${frame.station} ${numberOf(station)} · ${said(station.name)}`;

/** Decimal degrees, latitude first as maps and telephones take them, to 0.1 m; GeoJSON and plans say longitude first. */
export const positionText = ([lon, lat]: LonLat): string => `${degrees(lat)}, ${degrees(lon)}`;

/** Six decimals of a degree, never "-0". */
const degrees = (value: number): string => (Math.round(value * 1e6) / 1e6 + 0).toFixed(6);

/** The head of every list: title, plan, version, print time, and the caution. */
export const listHead = (
  title: string,
  plan: Plan,
  { text, printedAt }: Sheet,
): Html => html`${headHtml(title, plan, printedAt, text)}
<p class="caution">${text.frame.caution}</p>`;

/** Style of all lists: room under the caution, and before what follows a heading. */
export const LIST_STYLE: string = `
.caution + p { margin-top: 2mm; }
h2 + .stop { margin-top: 2mm; }
`;

/** Where runners come from, eight winds, from the azimuth in which they run (degrees). */
export const windOf = (azimuthDeg: number, { captain }: SheetText): string =>
  captain.compass[Math.round((((azimuthDeg + 180) % 360) + 360) / 45) % 8]!;

/** A mass for people, thousands marked; tenths only under 100. */
export const massText = (kilograms: number, units: UnitSystem, text: SheetText): string =>
  roundedText(formatMass(kilograms, units), text);

/** A volume for people, in the same way. */
export const volumeText = (litres: number, units: UnitSystem, text: SheetText): string =>
  roundedText(formatVolume(litres, units), text);

function roundedText(said: string, { frame }: SheetText): string {
  const [digits, unit] = said.split(' ') as [string, string];
  return Number(digits) < 100 ? said : `${frame.count(Math.round(Number(digits)))} ${unit}`;
}

export const sideWord = (side: 'left' | 'right' | 'unclear', { frame }: SheetText): string =>
  side === 'unclear' ? frame.sideUnclear : frame[side];
