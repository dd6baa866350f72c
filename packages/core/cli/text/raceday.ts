/** Race day as tables for people: who arrives, what stands poured, who serves, what is sent. */
import type { Analysis } from '../../src/analyse.ts';
import type { Finding } from '../../src/finding.ts';
import type { PrePour, RaceDay, StationDay } from '../../src/raceday/day.ts';
import type { Learnt } from '../../src/raceday/learn.ts';
import { formatClock, formatMinute, formatVolume } from '../../src/format.ts';
import { words } from '../../src/text/en/words.ts';
import { suppliesText } from '../../src/text/supplyWords.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { findingsText, oneLine, table } from '../printing.ts';

const NONE = '–';

const clock = (seconds: number | null | undefined): string =>
  seconds === null || seconds === undefined ? NONE : formatMinute(seconds);

const whole = (cups: number): string => Math.ceil(cups - 1e-9).toLocaleString('en');

/** `1,150 on 3 tables, 2 layers (53 %; curve 700, floor 1,150)`; a dash where a drink is not served. */
function poured(one: PrePour | undefined): string {
  if (one === undefined) return NONE;
  const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
  const room = one.room === null ? '' : `, room ${whole(one.room)}`;
  return `${whole(one.cups)} on ${counted(one.tables, 'table')}, ${counted(one.layers, 'layer')} (${Math.round(one.share * 100)} %; curve ${whole(one.massCurve)}, floor ${whole(one.floor)}${room})`;
}

export function raceDayText(analysis: Analysis, day: RaceDay, findings: readonly Finding[], units: UnitSystem): string {
  const nameOf = (id: string): string => analysis.stations.find((station) => station.id === id)?.name ?? id;
  const parts = [
    oneLine(analysis.plan.name),
    arrivalsTable(day, nameOf),
    suppliesTable(day, units),
    crewTable(day),
    totalsTable(day),
    runsTable(day, nameOf),
    findingsText(findings),
    CAUTION,
  ];
  return `${parts.join('\n\n')}\n`;
}

function arrivalsTable({ stations }: RaceDay, nameOf: (id: string) => string): string {
  const head = [
    'Station',
    'Name',
    ' Arrivals',
    ' First',
    ' 10 %',
    ' Half',
    ' 90 %',
    ' Last',
    ' Busiest minute',
    ' Crew here',
    ' Ready',
    ' Open until',
  ];
  const rows = stations.map(({ id, arrivals, quantiles, peak, crewAt, openFrom, openUntil }) => [
    id,
    nameOf(id),
    String(arrivals),
    clock(quantiles?.first),
    clock(quantiles?.p10),
    clock(quantiles?.p50),
    clock(quantiles?.p90),
    clock(quantiles?.last),
    peak === null ? NONE : `${peak.count} at ${formatClock(peak.at)}`,
    clock(crewAt),
    clock(openFrom),
    clock(openUntil),
  ]);
  return `Arrivals and clock (open until race control releases the station, whatever the published cutoff)\n${table(head, rows)}`;
}

function suppliesTable({ stations }: RaceDay, units: UnitSystem): string {
  const head = [
    'Station',
    ' Water, cups',
    ' Sports drink, cups',
    ' Gels',
    ' Water',
    ' Sports drink',
    'Water, poured',
    'Sports drink, poured',
  ];
  const rows = stations.map(({ id, cups, gels, volume, prePour }) => [
    id,
    cups.water.toLocaleString('en'),
    cups.sportsDrink.toLocaleString('en'),
    gels.toLocaleString('en'),
    formatVolume(volume.water, units),
    formatVolume(volume.sportsDrink, units),
    poured(prePour.water),
    poured(prePour.sportsDrink),
  ]);
  return `Cups, and what stands poured before the first runner (share of the day's cups)\n${table(head, rows)}`;
}

const crewRow = ({ id, crew, tables }: StationDay): string[] => [
  id,
  String(crew.handOut),
  String(crew.pour),
  String(crew.gel),
  String(crew.clean),
  String(crew.captain),
  String(crew.total),
  String(crew.shifts),
  String(tables.gel),
  String(tables.sportsDrink),
  String(tables.water),
];

function crewTable({ stations, totals }: RaceDay): string {
  const head = [
    'Station',
    ' Hand out',
    ' Pour',
    ' Gel',
    ' Clean up',
    ' Captain',
    ' In all',
    ' Shifts',
    ' Tables: gel',
    ' sports drink',
    ' water',
  ];
  return `Crew, ${totals.crew} in all\n${table(head, stations.map(crewRow))}`;
}

function totalsTable({ totals }: RaceDay): string {
  return `To order\n${table(
    ['Item', ' Needed', ' Pack', ' Packs'],
    totals.packs.map((one) => [
      suppliesText(one, words.supplies),
      amount(one.need),
      amount(one.pack),
      one.count.toLocaleString('en'),
    ]),
  )}`;
}

const amount = (value: number): string => Number(value.toFixed(1)).toLocaleString('en');

function runsTable({ runs }: RaceDay, nameOf: (id: string) => string): string {
  if (runs.length === 0) return 'Runs: none; the plan has no vehicles, or nothing to carry.';
  const rows = runs.flatMap((run) =>
    run.stops.map((stop, k) => [
      k === 0 ? run.vehicle : '',
      k === 0 ? (run.kind === 'drop' ? 'drop' : 'collect') : '',
      stop.station,
      nameOf(stop.station),
      clock(stop.arrive),
      clock(stop.leave),
      stop.side,
      `${Math.round(stop.load.reduce((sum, { kg }) => sum + kg, 0))} kg`,
    ]),
  );
  return `Runs\n${table(['Vehicle', 'Kind', 'Station', 'Name', ' Arrives', ' Leaves', 'Side', ' Load'], rows)}`;
}

/** Rates that counted cups and gels teach, as they stand in a plan. */
export function learntText({ take, basis }: Learnt): string {
  if (basis.length === 0) return `Nothing to learn from: no station of the plan has counts under "used".\n${CAUTION}\n`;
  const rows = basis.map(({ kind, used, reckoned, factor, stations }) => [
    kind,
    used.toLocaleString('en'),
    Math.round(reckoned).toLocaleString('en'),
    factor.toFixed(2),
    stations.join(', '),
  ]);
  return `Used against reckoned\n${table(['Kind', ' Used', ' Reckoned', ' Factor', 'Counted at'], rows)}\n\nFor the next plan, under "supplies":\n"take": ${JSON.stringify(take)}\n\n${CAUTION}\n`;
}
