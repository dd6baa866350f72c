/** What is to be said of a day that asks for too much or gives too little: people, time for pouring, drinks, rules without effect. */
import type { Finding } from '../finding.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE, DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import { byId } from '../plan/lookups.ts';
import type { Plan } from '../plan/plan.ts';
import { crewOf } from '../plan/practice.ts';
import type { StationDay } from './day.ts';
import { pourTime, pouredCups } from './hours.ts';
import { racedayFinding } from './racedayFinding.ts';

/** More crew than one for so many arrivals is a lot, and fewer than so many people never are: common practice, no source. */
export const ARRIVALS_EACH = 25;
const SMALL_CREW = 6;

/** Of drinks ordered for each runner where the last drink lies so far back, at the least. */
export const DRINKS_SOURCE =
  'Western Province Athletics, station guide 2019: at least 3 drinks a runner where stations are 5 km apart (read)';
const DRINKS_LEAST = 3;
const FAR_APART = 5000;

/** Of a station's own day. */
export function stationDayFindings(plan: Plan, day: StationDay): Finding[] {
  if (day.quantiles === null) return [];
  const where = { station: day.id };
  const { total, captain } = day.crew;
  const most = Math.max(SMALL_CREW, Math.floor(day.arrivals / ARRIVALS_EACH));
  const rules = crewOf(plan, byId(plan.stations, day.id));
  const cups = pouredCups(day.prePour);
  const takes = pourTime(cups, total - captain, rules.pourRate);
  const late = takes > rules.pourWithin;
  return [
    ...(total <= most
      ? []
      : [
          racedayFinding(
            'crew-many',
            { crew: total, arrivals: day.arrivals, most },
            { severity: 'warning', where, measured: total, limit: most, unit: 'people' },
          ),
        ]),
    ...(late
      ? [
          racedayFinding(
            'pour-late',
            { cups, people: Math.max(1, total - captain), takes, most: rules.pourWithin },
            { severity: 'warning', where, measured: takes, limit: rules.pourWithin, unit: 's' },
          ),
        ]
      : []),
  ];
}

/** Stations that every race reaches `FAR_APART` or more after its last drink, with fewer drinks ordered than the guide asks for. */
export function drinksFinding(days: readonly (StationDay & { readonly shortestLeg: number })[]): Finding[] {
  const few = days
    .flatMap(({ id, arrivals, handOut, ordered, cups, shortestLeg }) => {
      const each = ordered ?? cups;
      const drinks = arrivals === 0 ? 0 : (each.water + each.sportsDrink) / arrivals;
      return arrivals > 0 && handOut !== 'bottles' && shortestLeg >= FAR_APART && drinks > 0 && drinks < DRINKS_LEAST
        ? [{ id, drinks }]
        : [];
    })
    .sort((a, b) => a.drinks - b.drinks);
  const [worst] = few;
  if (worst === undefined) return [];
  return [
    racedayFinding(
      'drinks-few',
      { stations: few.map(({ id }) => id), ordered: worst.drinks, least: DRINKS_LEAST, apart: FAR_APART },
      {
        severity: 'note',
        where: { path: '/supplies', ...(few.length === 1 ? { station: worst.id } : {}) },
        measured: worst.drinks,
        limit: DRINKS_LEAST,
        unit: 'drinks',
      },
    ),
  ];
}

/** Rules of cups that mean nothing where bottles are filled. */
const CUP_RULES = ['cup', 'fill', 'cupsPerLayer', 'layers', 'prePourSafety', 'cupsPerBag', 'cupsPerBox'] as const;
const POUR_RULES = ['pourers', 'pourRate', 'handRate', 'fromTables', 'cleanPer'] as const;

/** Rules that differ from the usual ones and have no effect in this plan. */
export function unusedFindings(plan: Plan): Finding[] {
  const { supplies, crew, practice, stations } = plan;
  const found = (rules: string[], because: 'bottles' | 'cups', path: string): Finding[] =>
    rules.length === 0
      ? []
      : [racedayFinding('rule-unused', { rules, because }, { severity: 'note', where: { path } })];
  const bottles = stations.every((station) => (station.supplies.handOut ?? supplies.handOut) === 'bottles');
  const ofCups = bottles
    ? [
        ...CUP_RULES.filter((key) => supplies[key] !== DEFAULT_SUPPLIES[key]).map((key) => `supplies.${key}`),
        ...POUR_RULES.filter((key) => crew[key] !== DEFAULT_CREW[key]).map((key) => `crew.${key}`),
      ]
    : [];
  const spaced = practice.boxEvery !== DEFAULT_PRACTICE.boxEvery ? ['practice.boxEvery'] : [];
  return [...found(ofCups, 'bottles', '/supplies'), ...found(spaced, 'cups', '/practice/boxEvery')];
}
