/** The papers in English. */
import { captain } from './en/captain.ts';
import { card } from './en/card.ts';
import { frame } from './en/frame.ts';
import { index } from './en/index.ts';
import { overview } from './en/overview.ts';
import { planThings } from './en/planThings.ts';
import { placement } from './en/placement.ts';
import { report } from './en/report.ts';
import { runs } from './en/runs.ts';
import { shared } from './en/shared.ts';
import { supplies } from './en/supplies.ts';
import { weather } from './en/weather.ts';
import { year } from './en/year.ts';
import type { SheetText } from './sheetText.ts';

export const en: SheetText = {
  language: 'en',
  name: 'English',
  things: planThings,
  frame,
  captain,
  card,
  report,
  weather,
  year,
  lists: { placement, supplies, runs, overview, shared, index },
};
