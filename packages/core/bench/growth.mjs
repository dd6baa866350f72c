/**
 * How the time of each stage grows with what a plan holds more of: the exponent at the upper end, log2 of the time of a plan
 * over that of one with half as many. Processor time, the least of some rounds, since all that comes beside it only adds.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { analyse, improve, readPlan } from '@halfcup/core';
import { courseStage, dayStage, layoutStage, passStage, reviewLayout } from '@halfcup/core/stages';
import { papersOf } from '@halfcup/core/papers';
import { windingLine } from './data.mjs';
import { READING } from './growthReading.mjs';

setFlagsFromString('--expose-gc');
/** Collects garbage. */
const collect = runInNewContext('gc');

const MOST = 1.2;
const ROUNDS = 6;

const must = (result) => {
  if (!result.ok) throw new Error(result.findings[0].message);
  return result.value;
};

/** Processor time of a call, seconds, as the mean of some calls. */
function timed(work, calls) {
  // What other works have left behind is no time of this one.
  collect();
  const from = process.cpuUsage();
  for (let k = 0; k < calls; k++) work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6 / calls;
}

/** The least processor time of each of some works, in turn, so that a busy machine is busy for all; short ones are called again and again. */
function least(works) {
  const firsts = works.map((work) => timed(work, 1));
  const calls = firsts.map((first) => Math.max(1, Math.ceil(0.4 / Math.max(first, 1e-6))));
  const rounds = Array.from({ length: ROUNDS }, () => works.map((work, k) => timed(work, calls[k])));
  return firsts.map((first, k) => Math.min(first, ...rounds.map((round) => round[k])));
}

/** 42 km or so in mid-ocean, and back beside nothing. */
const line = (points, metres) => {
  const { lon, lat } = windingLine(points, metres / points);
  return Array.from(lon, (x, i) => [
    Number(x.toFixed(7)),
    Number(lat[i].toFixed(7)),
    Math.round(20 + 9 * Math.sin(i / 50)),
  ]);
};

const clockText = (seconds) =>
  [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
    .map((n) => String(n).padStart(2, '0'))
    .join(':');

/** A plan with so many of each; `entrants`: of one race. */
export function planOf({
  stations = 12,
  spacing,
  races = 2,
  waves = 2,
  points = 2000,
  zones = 4,
  marks = 0,
  waivers = 0,
  packed = false,
  entrants = 1000,
}) {
  // Metres of course: 42 km, or so many for each station.
  const metres = spacing === undefined ? 42_000 : spacing * (stations + 1);
  const track = line(points, metres);
  return {
    format: 'halfcup-plan',
    version: 1,
    name: 'growth',
    courses: [
      {
        id: 'c',
        line: track,
        drawn: 'centre',
        marks: Array.from({ length: marks }, (_, k) => {
          const at = Math.floor(((k + 1) * (track.length - 1)) / (marks + 1));
          return { at: track[at].slice(0, 2), measure: (metres * at) / (track.length - 1) };
        }),
      },
    ],
    races: Array.from({ length: races }, (_, r) => ({
      id: `r${r}`,
      name: `Race ${r}`,
      course: 'c',
      finish: { median: '4:20:00', spread: 0.2 },
      waves: Array.from({ length: waves }, (_, w) => ({
        time: clockText(8 * 3600 + 60 * ((r * waves + w) % 240)),
        entrants: Math.max(1, Math.round(entrants / waves)),
      })),
    })),
    stations: Array.from({ length: stations }, (_, k) => ({
      id: `s${k}`,
      name: `Station ${k}`,
      on: {
        course: 'c',
        measure: packed ? 20_000 + k : Math.round((0.97 * metres * (k + 0.5)) / stations),
        side: 'right',
      },
    })),
    zones: Array.from({ length: zones }, (_, k) => {
      const [lon, lat] = track[Math.floor(((k + 0.5) * track.length) / zones)];
      const corner = (e, n) => [lon + e * 1e-4, lat + n * 1e-4];
      return { rule: 'keep-clear', name: `Zone ${k}`, polygon: [corner(1, 1), corner(2, 1), corner(2, 2)] };
    }),
    waivers: Array.from({ length: waivers }, (_, k) => ({
      code: 'spacing-long',
      station: `s${k % stations}`,
      by: 'Ada Quill',
      reason: `reason ${k}`,
    })),
    vehicles: [{ id: 'v', from: '03:00' }],
  };
}

/** The work of each stage on a plan, in the order of the job. */
export function worksOf(plan) {
  const text = JSON.stringify(plan);
  const read = must(readPlan(text, 'growth.json')).plan;
  const courses = must(courseStage(read, { gpx: new Map() }));
  const seen = must(passStage(read, courses));
  const analysis = must(analyse(read, { gpx: new Map() }));
  const layout = must(layoutStage(read, courses, analysis.day));
  const facts = { races: analysis.kept.fields.races, day: analysis.day };
  return {
    'reading the plan': () => readPlan(text, 'growth.json'),
    courses: () => courseStage(read, { gpx: new Map() }),
    layout: () => layoutStage(read, courses, analysis.day),
    'race day': () => dayStage(read, courses, seen),
    review: () => reviewLayout(layout, [], undefined, facts),
    papers: () => papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 10:00' }),
    improve: () => improve(analysis, { within: 100 }),
  };
}

const ALL = ['reading the plan', 'layout', 'race day', 'review', 'papers'];
/** What there is more of, how many at the upper end, and which stages it goes through. */
const CASES = [
  { what: 'stations along a course', key: 'stations', count: 320, keys: {}, stages: ALL },
  { what: 'stations on 320 m of course', key: 'stations', count: 320, keys: { packed: true }, stages: ALL },
  { what: 'races', key: 'races', count: 80, keys: { entrants: 200 }, stages: ALL },
  { what: 'waves', key: 'waves', count: 320, keys: {}, stages: ALL },
  {
    what: 'points of a course',
    key: 'points',
    count: 160_000,
    keys: {},
    stages: ['reading the plan', 'courses', ...ALL.slice(1)],
  },
  { what: 'zones', key: 'zones', count: 640, keys: {}, stages: ALL },
  { what: 'marks', key: 'marks', count: 320, keys: {}, stages: ['reading the plan', 'courses', 'layout', 'review'] },
  { what: 'waivers', key: 'waivers', count: 1280, keys: {}, stages: ['reading the plan', 'review', 'papers'] },
  {
    what: 'stations 1 km apart',
    key: 'stations',
    count: 40,
    keys: { entrants: 200, spacing: 1000 },
    stages: ['improve'],
  },
  { what: 'races', key: 'races', count: 16, keys: { entrants: 200 }, stages: ['improve'] },
];

/** Every work: its stage, what there is more of, how many at the upper end, and the works on half as much and on all. */
function* works(words) {
  const asked = (stage, what) => `${stage} by ${what}`.includes(words);
  for (const { what, key, count, keys, stages } of CASES) {
    const wanted = stages.filter((stage) => asked(stage, what));
    if (wanted.length === 0) continue;
    const [half, whole] = [count / 2, count].map((n) => worksOf(planOf({ ...keys, [key]: n })));
    for (const stage of wanted) yield { stage, what, count, half: half[stage], whole: whole[stage] };
  }
  for (const [stage, what, count, textOf, work] of READING) {
    if (!asked(stage, what)) continue;
    const [half, whole] = [count / 2, count].map(textOf);
    yield { stage, what, count, half: () => work(half), whole: () => work(whole) };
  }
}

/** The rows of every work, or of those whose stage and name have some words in them: `run.mjs growth 'race day by races'`. Whether all meet. */
export function benchExponents(words = '') {
  const rows = [];
  for (const { stage, what, count, half, whole } of works(words)) {
    const [low, high] = least([half, whole]);
    const figure = Math.log2(high / low);
    const many = (n) => n.toLocaleString('en');
    const work = `${stage}, ${many(count / 2)} to ${many(count)} ${what}`;
    const met = figure <= MOST;
    rows.push({ work, seconds: high, figure, bound: 'at most', target: MOST, met });
    console.log(`${met ? ' ' : '!'} ${work}: exponent ${figure.toFixed(2)}, ${high.toPrecision(2)} s`);
  }
  const file = fileURLToPath(new URL('growth.json', import.meta.url));
  const before = words === '' || !existsSync(file) ? [] : JSON.parse(readFileSync(file, 'utf8')).rows;
  const kept = before.map((row) => rows.find(({ work }) => work === row.work) ?? row);
  const added = rows.filter(({ work }) => !before.some((row) => row.work === work));
  writeFileSync(file, `${JSON.stringify({ node: process.version, rows: [...kept, ...added] }, null, 2)}\n`);
  return rows.every(({ met }) => met);
}
