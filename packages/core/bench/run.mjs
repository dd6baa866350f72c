/**
 * `pnpm bench`: course geometry against its peers in the same run. Prints a table of ratios and
 * writes it to bench/results.json, from which the table of packages/core/BENCHMARKS.md is made. Exits 1 where a ratio
 * falls short of its target. Every time is the median of five interleaved rounds. `run.mjs sizes` runs one part
 * alone and puts its rows among the others.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { lineString, nearestPointOnLine, point } from '@turf/turf';
import geographiclib from 'geographiclib-geodesic';
import { SaxesParser } from 'saxes';
import { readPlan } from '@halfcup/core';
import { dayStage, layoutStage, passStage } from '@halfcup/core/stages';
import { indexCourse, measureLine, passesOf } from '@halfcup/core/geometry';
import { readGpx } from '@halfcup/core/gpx';
import { readResults } from '@halfcup/core/raceday';
import { benchClock } from './clock.mjs';
import { courseOf, generator, gpxText, indexedOf, pinsAlong, windingLine } from './data.mjs';
import { benchGround } from './ground.mjs';
import { benchExponents } from './growth.mjs';
import { benchSizes } from './sizes.mjs';
import { inTurn, median, roundsOf } from './timing.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const rows = [];
const ROUNDS = 5;

/** `at least` wants the figure to be no smaller than the target, `at most` no larger; without a target it is only told. */
function report(work, peer, figure, unit, bound, target) {
  const met = bound === undefined || (bound === 'at least' ? figure >= target : figure <= target);
  rows.push({ work, peer, figure, unit, bound, target, met });
  const wanted = bound === undefined ? '' : ` (${bound} ${target}${unit})`;
  console.log(`${met ? ' ' : '!'} ${work}; ${peer}: ${figure.toPrecision(3)}${unit}${wanted}`);
}

function benchGpx() {
  const text = gpxText(130_000);
  const bare = () => {
    const parser = new SaxesParser();
    parser.write(text);
    parser.close();
  };
  const { ratio } = inTurn(() => readGpx(text, 'bench.gpx'), bare, ROUNDS);
  const work = `read a GPX of 130,000 points (${(text.length / 1e6).toFixed(1)} MB)`;
  report(work, 'time over a bare saxes pass', 1 / ratio, '×', 'at most', 1.5);
  const folder = mkdtempSync(join(tmpdir(), 'halfcup-bench-'));
  try {
    const file = join(folder, 'bench.gpx');
    writeFileSync(file, text);
    // The larger stack is for gpxparser, which spreads all elevations into one call.
    const child = (reader) =>
      JSON.parse(
        execFileSync(
          process.execPath,
          ['--max-old-space-size=8192', '--stack-size=3900', join(here, 'memory.mjs'), reader, file],
          { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
        ),
      );
    const pairs = Array.from({ length: ROUNDS }, () => [child('halfcup'), child('gpxparser')]);
    const speed = median(pairs.map(([ours, peer]) => peer.ms / ours.ms));
    const memory = median(pairs.map(([ours, peer]) => peer.peakMb / ours.peakMb));
    report(work, 'faster than gpxparser in Node', speed, '×', 'at least', 30);
    report(work, 'peak memory of gpxparser over ours', memory, '×', 'at least', 8);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function benchMeasure() {
  const { lon, lat } = windingLine(200_000, 5);
  const { Geodesic } = geographiclib;
  const truth = () => {
    let sum = 0;
    for (let i = 1; i < lon.length; i++)
      sum += Geodesic.WGS84.Inverse(lat[i - 1], lon[i - 1], lat[i], lon[i], Geodesic.DISTANCE).s12;
    return sum;
  };
  const { ratio } = inTurn(() => measureLine(lon, lat), truth, ROUNDS);
  report('measure of 200,000 points', 'faster than summing geographiclib', ratio, '×', 'at least', 8);
  report(
    'measure of 200,000 points',
    'total against geographiclib',
    Math.abs(measureLine(lon, lat).at(-1) - truth()) * 1000,
    ' mm',
    'at most',
    0.1,
  );
}

function benchPasses() {
  const line = windingLine(20_000, 2.1);
  const course = courseOf(line);
  const indexed = indexCourse(course);
  const pins = pinsAlong(course, 30);
  const geojson = lineString(Array.from(line.lon, (x, i) => [x, line.lat[i]]));
  const turf = () => pins.forEach((pin) => nearestPointOnLine(geojson, point(pin)));
  const ours = () => pins.forEach((pin) => passesOf(indexed, pin));
  const work = 'all passes of 30 stations on 20,000 points';
  for (let k = 0; k < 50; k++) ours();
  const many = inTurn(
    () => {
      for (let k = 0; k < 100; k++) ours();
    },
    turf,
    ROUNDS,
  );
  report(work, "faster than 30 calls of turf's nearestPointOnLine", many.ratio * 100, '×', 'at least', 1000);
  const withIndex = () => pins.forEach((pin, k) => passesOf(k === 0 ? indexCourse(course) : indexed, pin));
  const built = inTurn(withIndex, turf, ROUNDS);
  report(work, 'the same, with building the index', built.ratio, '×', 'at least', 50);
  return { turfCall: () => nearestPointOnLine(geojson, point(pins[15])) };
}

function benchGrowth() {
  const small = indexedOf(windingLine(20_000, 2.1));
  globalThis.gc?.();
  const before = process.memoryUsage();
  const large = indexedOf(windingLine(1_000_000, 2.1));
  globalThis.gc?.();
  const after = process.memoryUsage();
  const time = (indexed) => {
    const pins = pinsAlong(indexed.course, 30);
    return () => {
      for (let k = 0; k < 200; k++) pins.forEach((pin) => passesOf(indexed, pin));
    };
  };
  const { ratio } = inTurn(time(small), time(large), ROUNDS);
  report(
    'one station on a course 50 times longer (1,000,000 points)',
    'time over that on 20,000 points',
    ratio,
    '×',
    'at most',
    2,
  );
  const bytes = (after.arrayBuffers + after.heapUsed - before.arrayBuffers - before.heapUsed) / 1_000_000;
  report('a course of 1,000,000 points with its index', 'memory a point', bytes, ' bytes', 'at most', 120);
  const dense = indexedOf(windingLine(160_000, 0.2625));
  const densely = inTurn(time(small), time(dense), ROUNDS);
  report('one station on points 8 times denser', 'time over that on 20,000 points', densely.ratio, '×', 'at most', 8);
}

function benchLayout(turfCall) {
  const full = courseOf(windingLine(20_000, 2.1), 'full');
  const courses = [
    indexCourse(full),
    indexCourse(courseOf({ lon: full.lon.slice(0, 10_000), lat: full.lat.slice(0, 10_000) }, 'half')),
  ];
  const line = [
    [-17.4, -33.2],
    [-17.39, -33.2],
  ];
  const text = JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    courses: [
      { id: 'full', line },
      { id: 'half', line },
    ],
    races: [
      { id: 'm', course: 'full' },
      { id: 'h', course: 'half' },
    ],
    stations: pinsAlong(full, 30).map((at, k) => ({ id: `s${k}`, at, serves: ['gel', 'sportsDrink', 'water'] })),
  });
  const read = readPlan(text, 'bench.json');
  if (!read.ok) throw new Error(read.findings[0].message);
  const { plan } = read.value;
  const stage = () => layoutStage(plan, courses);
  const { ratio } = inTurn(stage, turfCall, ROUNDS);
  report(
    'the layout of 30 stations and two races on 20,000 points',
    "time over one call of turf's nearestPointOnLine",
    1 / ratio,
    '×',
    'at most',
    0.25,
  );
}

function benchRaceDay() {
  const random = generator(5);
  const rows = Array.from({ length: 50_000 }, (_, k) => {
    const seconds = Math.round(9000 + 12_000 * random() + 6000 * random());
    const two = (value) => String(value).padStart(2, '0');
    return `${k + 1},Runner ${k + 1},${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  });
  const text = `bib,name,net\n${rows.join('\n')}\n`;
  const full = courseOf(windingLine(20_000, 2.1), 'full');
  const courses = [indexCourse(full)];
  const finish = { csv: 'results.csv', column: 'net' };
  const waves = ['08:00', '08:20', '08:40', '09:00'].map((time) => ({ time, entrants: 12_500 }));
  const planJson = (entrants) =>
    JSON.stringify({
      format: 'halfcup-plan',
      version: 1,
      courses: [
        {
          id: 'full',
          line: [
            [-17.4, -33.2],
            [-17.39, -33.2],
          ],
        },
      ],
      races: [{ id: 'm', course: 'full', show: 1, finish, waves: waves.map((wave) => ({ ...wave, entrants })) }],
      stations: pinsAlong(full, 30).map((at, k) => ({ id: `s${k}`, at })),
    });
  const dayOf = (entrants) => {
    const read = readPlan(planJson(entrants), 'bench.json');
    if (!read.ok) throw new Error(read.findings[0].message);
    const { plan } = read.value;
    const seen = passStage(plan, courses);
    if (!seen.ok) throw new Error(seen.findings[0].message);
    return () => dayStage(plan, courses, seen.value, new Map([['results.csv', text]]));
  };
  const parse = () => readResults(text, 'net', 'results.csv');
  const rounds = roundsOf([parse, dayOf(6250), dayOf(12_500)], ROUNDS);
  report(
    'race day of 50,000 runners in four waves over 30 stations, its results read',
    'time over reading the results file alone',
    median(rounds.map(([reading, , whole]) => whole / reading)),
    '×',
    'at most',
    3,
  );
  report(
    'race day of 50,000 runners over that of 25,000, both less the reading',
    'growth',
    median(rounds.map(([reading, half, whole]) => (whole - reading) / (half - reading))),
    '×',
    'at most',
    2.4,
  );
}

let grown = true;
const PARTS = {
  // First, in a process that has run nothing else: what ran before slows the bare pass more than ours.
  gpx: benchGpx,
  measure: benchMeasure,
  passes: () => benchLayout(benchPasses().turfCall),
  sizes: () => benchSizes(report),
  points: benchGrowth,
  raceday: benchRaceDay,
  clock: () => benchClock(report),
  ground: () => benchGround(report),
  // Its rows have a file and a table of their own.
  growth: () => (grown = benchExponents(process.argv[3])),
};
const file = join(here, 'results.json');
const only = process.argv[2];
if (only !== undefined && PARTS[only] === undefined)
  throw new Error(`found the part "${only}"; expected one of ${Object.keys(PARTS).join(', ')}`);
for (const part of only === undefined ? Object.values(PARTS) : [PARTS[only]]) part();
// Of a part alone its rows are put in the place of those that were there.
const before = only === undefined ? [] : JSON.parse(readFileSync(file, 'utf8')).rows;
const isNew = ({ work, peer }) => rows.some((row) => row.work === work && row.peer === peer);
const kept = before.filter((row) => !isNew(row));
const place = before.findIndex(isNew);
kept.splice(place < 0 ? kept.length : place, 0, ...rows);
writeFileSync(file, `${JSON.stringify({ node: process.version, rows: kept }, null, 2)}\n`);
process.exitCode = grown && rows.every((row) => row.met) ? 0 : 1;
