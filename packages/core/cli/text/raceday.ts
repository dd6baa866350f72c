/** Race day for people: who arrives, what stands poured, who serves, what is sent. */
import type { Analysis } from '../../src/analyse.ts';
import type { Finding } from '../../src/finding.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { weatherHours } from '../../src/plan/weather.ts';
import { temperatureText, windText } from '../../src/text/weatherText.ts';
import type { DayCrew, PrePour, RaceDay } from '../../src/raceday/day.ts';
import { formatMinute, formatVolume } from '../../src/format.ts';
import { pourText } from '../../src/text/en/pourText.ts';
import { pourWordsOf } from '../../src/text/pourWords.ts';
import { type View, findingsText } from '../findings.ts';
import { counted } from '../messages.ts';
import { grouped, kindName, supplyAmount, supplyName } from '../supplyWords.ts';
import { table } from '../tables.ts';
import { NONE, heading, page, section } from './blocks.ts';
import { runsText } from './runs.ts';

export const clock = (seconds: number | null | undefined): string =>
  seconds === null || seconds === undefined ? NONE : formatMinute(seconds);

const whole = (cups: number): string => Math.ceil(cups - 1e-9).toLocaleString('en');

export function raceDayText({ plan }: Analysis, day: RaceDay, findings: readonly Finding[], view: View): string {
  return page(
    [
      heading([plan.name], view.screen),
      weatherTable(plan, view),
      arrivalsTable(day, view),
      drinksTable(day, view),
      pouredTable(day, view),
      crewTable(day, view),
      orderTable(day, view),
      resupplyTable(day, view),
      ...runsText(day, plan, view),
      findingsText(findings, view),
    ],
    view.screen,
  );
}

const WEATHER = [' From', ' WBGT', ' Air', ' Humidity', ' Wind', 'Level'];
const WEATHER_HINT =
  'Levels for road races: ACSM 1996, as quoted by Road Race Management. The medical director decides, not this table.';

/** What the plan expects, hour by hour; nothing where it says none. */
function weatherTable({ weather = [] }: Plan, { units, screen }: View): string {
  if (weather.length === 0) return '';
  const degrees = (celsius: number | undefined): string =>
    celsius === undefined ? NONE : temperatureText(celsius, units);
  const rows = weatherHours(weather).map(({ at, wbgtC, airC, humidity, windKmh, heat }) => [
    clock(at),
    heat?.by === 'humidity' ? `about ${degrees(heat.celsius)}` : degrees(wbgtC),
    degrees(airC),
    humidity === undefined ? NONE : `${Math.round(humidity * 100)} %`,
    windKmh === undefined ? NONE : windText(windKmh, units),
    heat === null ? NONE : heat.by === 'air' ? `${heat.level}, by air alone` : heat.level,
  ]);
  return section('Weather expected', table(WEATHER, rows, screen), screen, WEATHER_HINT);
}

const ARRIVALS = [
  'Station',
  ' Arrivals',
  ' First runner',
  ' 10 % have passed',
  ' Half have passed',
  ' 90 % have passed',
  ' Last runner',
  ' Most in a minute',
  ' from',
  ' Crew on site',
  ' Ready to serve',
  ' Open until about',
  ' All packed',
];

function arrivalsTable({ stations }: RaceDay, { names, screen }: View): string {
  const rows = stations.map(({ id, arrivals, quantiles, peak, crewAt, openFrom, openUntil, packedAt }) => [
    names.station(id),
    arrivals.toLocaleString('en'),
    clock(quantiles?.first),
    clock(quantiles?.p10),
    clock(quantiles?.p50),
    clock(quantiles?.p90),
    clock(quantiles?.last),
    peak === null ? NONE : peak.count.toLocaleString('en'),
    clock(peak?.at),
    clock(crewAt),
    clock(openFrom),
    clock(openUntil),
    clock(packedAt),
  ]);
  const hint = 'Keep each station open until race control releases it, whatever the published cutoff says.';
  return section('Arrivals', table(ARRIVALS, rows, screen), screen, hint);
}

/** Of all who come, whatever their race; a dash where nobody does. */
function meanOf(
  races: RaceDay['stations'][number]['races'],
  arrivals: number,
  of: (race: RaceDay['stations'][number]['races'][number]) => number,
  told: (mean: number) => string,
): string {
  return arrivals === 0 ? NONE : told(races.reduce((sum, race) => sum + race.arrivals * of(race), 0) / arrivals);
}

function drinksTable({ stations }: RaceDay, { units, names, screen }: View): string {
  const head = [
    'Station',
    ' Since last drink',
    ' Cups a runner',
    ' Cups of water',
    ' Cups of sports drink',
    ' Gels',
    ' Gel tables',
    ' Water',
    ' Sports drink',
  ];
  const rows = stations.map(({ id, cups, gels, tables, volume, races, arrivals }) => [
    names.station(id),
    meanOf(
      races,
      arrivals,
      ({ sinceDrink = 0 }) => sinceDrink / 60,
      (minutes) => `${Math.round(minutes)} min`,
    ),
    meanOf(
      races,
      arrivals,
      ({ take }) => (take?.water ?? 0) + (take?.sportsDrink ?? 0),
      (each) => each.toFixed(1),
    ),
    cups.water.toLocaleString('en'),
    cups.sportsDrink.toLocaleString('en'),
    gels.toLocaleString('en'),
    String(tables.gel),
    grouped(formatVolume(volume.water, units)),
    grouped(formatVolume(volume.sportsDrink, units)),
  ]);
  return section('Needed on the day', table(head, rows, screen), screen);
}

const POURED = ['Station', 'Drink', 'Pour', ' Share of the day', ' To keep up', ' Least by rule', ' Room'];
const POURED_HINT =
  'To keep up: the fewest cups with which the tables never run dry. Least by rule: the fewest that the plan’s rules allow. Room: what the tables hold, if their number is fixed.';

function pouredTable({ stations }: RaceDay, { names, screen }: View): string {
  const rows = stations.flatMap(({ id, prePour }) =>
    (['water', 'sportsDrink'] as const).flatMap((drink) => {
      const one = prePour[drink];
      return one === undefined ? [] : [[names.station(id), kindName(drink), ...pouredCells(one)]];
    }),
  );
  if (rows.length === 0) return '';
  return section('Poured before the first runner', table(POURED, unrepeated(rows), screen), screen, POURED_HINT);
}

const pouredCells = (one: PrePour): string[] => [
  pourText(pourWordsOf({ cups: one.cups, tables: one.tables, cupsPerLayer: one.cupsPerLayer ?? one.cups }, whole)),
  `${Math.round(one.share * 100)} %`,
  whole(one.massCurve),
  whole(one.floor),
  one.room === null ? NONE : whole(one.room),
];

/** A first cell only where it differs from that of the row above. */
const unrepeated = (rows: readonly string[][]): string[][] =>
  rows.map((row, k) => (k > 0 && rows[k - 1]![0] === row[0] ? ['', ...row.slice(1)] : row));

const CREW = ['Station', ' Hand out', ' Pour', ' Gel', ' Clean up', ' Captain', ' Crew', ' Shifts'];

const crewCells = ({ handOut, pour, gel, clean, captain, total, shifts }: DayCrew): string[] =>
  [handOut, pour, gel, clean, captain, total, shifts].map(String);

function crewTable({ stations, totals }: RaceDay, { names, screen }: View): string {
  const rows = stations.map((station) => [names.station(station.id), ...crewCells(station.crew)]);
  const title = `Crew needed at once, all stations: ${counted(totals.crew, 'volunteer')}`;
  return section(title, table(CREW, rows, screen), screen);
}

function orderTable({ totals }: RaceDay, { units, screen }: View): string {
  const rows = totals.packs.map((pack) => [
    supplyName(pack),
    supplyAmount(pack, pack.need, units),
    supplyAmount(pack, pack.pack, units),
    pack.count.toLocaleString('en'),
  ]);
  return section('To order', table(['Item', ' Needed', ' In packs of', ' Packs'], rows, screen), screen);
}

const RESUPPLY = ['Station', 'Drink', ' Seen and called', ' Arrives', ' Runs out', 'In time'];
const RESUPPLY_HINT =
  'If runners drink half as much again (an assumption): when fewer jugs are left than there should be, and whether what is called for then comes in time.';

function resupplyTable({ resupply = [] }: RaceDay, { names, screen }: View): string {
  if (resupply.length === 0) return '';
  const rows = resupply.map(({ station, drink, called, arrives, runsOut, inTime }) => [
    names.station(station),
    kindName(drink),
    clock(called),
    clock(arrives),
    clock(runsOut),
    inTime ? 'yes' : 'NO',
  ]);
  return section('Second delivery', table(RESUPPLY, rows, screen), screen, RESUPPLY_HINT);
}
