/** The papers of the plan as shown, and the same content for other tools; loaded only when asked for. */
import { toCalendar, toCsv, toGpx, type Finding } from '@halfcup/core';
import { toGeoJson } from '@halfcup/core/geojson';
import {
  captainSheet,
  cardSheet,
  contextOf,
  LANGUAGES,
  papersOf,
  type Paper,
  type PrintedPaper,
} from '@halfcup/core/papers';
import type { OpenPlan, Placed } from '../state/store/store.ts';
import { reportOf } from './report.ts';

export interface PaperChoice {
  readonly paper: Paper;
  readonly language: string;
  /** "2027-09-12 08:00", as it is printed on every page. */
  readonly printedAt: string;
}

export const languages = (): readonly { readonly value: string; readonly label: string }[] =>
  LANGUAGES.map(({ language, name }) => ({ value: language, label: name }));

/** The minute, by this device's clock. */
export function minuteNow(now: Date = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** Papers for each station that can be had for one alone, by the names of both. */
const OF_ONE = { 'captains.html': 'captain', 'cards.html': 'card' } as const;

/** Whether a paper can be had for one station. */
export const isPerStation = (name: string): name is keyof typeof OF_ONE => Object.hasOwn(OF_ONE, name);

/** A paper by its name, for one station (by its index) where it can be had for one and one is asked for. */
export const paperNamed = (
  papers: readonly PrintedPaper[],
  name: string,
  station: number | null,
): PrintedPaper | undefined => {
  const own = station === null || !isPerStation(name) ? name : `${OF_ONE[name]}-${station + 1}.html`;
  return papers.find((paper) => paper.name === own) ?? papers.find((paper) => paper.name === name);
};

/** Every paper, those of the selected station alone last; the plan's name tells which variant they show. */
export async function allPapers(
  open: OpenPlan,
  selected: string | null,
  placed: Placed | null,
  choice: PaperChoice,
): Promise<readonly PrintedPaper[]> {
  const { variant, analysis } = open;
  const shown =
    variant === null
      ? analysis
      : { ...analysis, plan: { ...analysis.plan, name: `${analysis.plan.name} (${variant})` } };
  const context = contextOf(open.files.context);
  const options = { ...choice, ...(context === null ? {} : { context }) };
  const station = shown.stations.find(({ id }) => id === selected);
  const own =
    station === undefined
      ? []
      : [
          {
            name: `captain-${station.index + 1}.html`,
            title: `Captain’s sheet, ${station.name} only`,
            html: captainSheet(shown, station, options),
          },
          {
            name: `card-${station.index + 1}.html`,
            title: `Volunteer card, ${station.name} only`,
            html: cardSheet(shown, station, options),
          },
        ];
  return [...papersOf(shown, options), ...(await reportPaper(open, placed, choice)), ...own];
}

/** None where the files' digests cannot be had: the report's own button says why. */
async function reportPaper(
  open: OpenPlan,
  placed: Placed | null,
  choice: { readonly paper: Paper; readonly language?: string },
): Promise<readonly PrintedPaper[]> {
  try {
    return [{ name: 'report.html', title: 'Reviewer’s report', html: await reportOf(open, placed, choice) }];
  } catch {
    return [];
  }
}

export type Ending = '.gpx' | '.geojson' | '.csv' | '.ics';
type Given = { readonly text: string } | { readonly findings: readonly Finding[] };

const given = (result: ReturnType<typeof toGpx>): Given =>
  result.ok ? { text: result.value } : { findings: result.findings };

/** The layout as shown, in a format for other tools; why not, where it cannot be. */
export const EXPORTS: Readonly<Record<Ending, (open: OpenPlan) => Given>> = {
  '.gpx': ({ analysis }) => given(toGpx(analysis)),
  '.geojson': ({ analysis }) => ({ text: `${JSON.stringify(toGeoJson(analysis))}\n` }),
  '.csv': ({ analysis }) => ({ text: toCsv(analysis) }),
  '.ics': ({ analysis }) => given(toCalendar(analysis, Date.now())),
};
