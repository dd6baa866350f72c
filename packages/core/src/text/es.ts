/** The papers in Spanish. */
import { captain } from './es/captain.ts';
import { card } from './es/card.ts';
import { frame } from './es/frame.ts';
import { index } from './es/index.ts';
import { overview } from './es/overview.ts';
import { planThings } from './es/planThings.ts';
import { placement } from './es/placement.ts';
import { report } from './es/report.ts';
import { runs } from './es/runs.ts';
import { shared } from './es/shared.ts';
import { supplies } from './es/supplies.ts';
import { weather } from './es/weather.ts';
import { year } from './es/year.ts';
import type { SheetText } from './sheetText.ts';

export const es: SheetText = {
  language: 'es',
  name: 'español',
  things: planThings,
  frame,
  captain,
  card,
  report,
  weather,
  year,
  lists: { placement, supplies, runs, overview, shared, index },
};
