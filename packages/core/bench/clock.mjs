/** The crowd along a course at a time of day, against sorting as many numbers in the same run. */
import { analyse, readPlan } from '@halfcup/core';
import { crowdAlong } from '@halfcup/core/raceday';
import { generator, windingLine } from './data.mjs';
import { inTurn } from './timing.mjs';

const RUNNERS = 50_000;
const ROUNDS = 25;

function benchAnalysis() {
  const { lon, lat } = windingLine(20_000, 2.1);
  const waves = ['08:00', '08:20', '08:40', '09:00'].map((time) => ({ time, entrants: RUNNERS / 4 }));
  const read = readPlan(
    JSON.stringify({
      format: 'halfcup-plan',
      version: 1,
      courses: [{ id: 'c', line: Array.from(lon, (x, k) => [x, lat[k]]) }],
      races: [{ id: 'r', course: 'c', show: 1, waves, cutoff: '15:30', finish: { median: '4:10:00', spread: 0.2 } }],
      stations: [],
    }),
    'bench.json',
  );
  if (!read.ok) throw new Error(read.findings[0].message);
  const analysed = analyse(read.value.plan, { gpx: new Map() });
  if (!analysed.ok) throw new Error(analysed.findings[0].message);
  return analysed.value;
}

export function benchClock(report) {
  const analysis = benchAnalysis();
  const random = generator(9);
  const numbers = Float64Array.from({ length: RUNNERS }, () => random());
  let time = 9.5 * 3600;
  const ours = () => crowdAlong(analysis, (time += 7));
  const sort = () => numbers.slice().sort();
  const on = ours()[0].onRoad;
  if (on < RUNNERS * 0.9) throw new Error(`found ${on} on the road; expected nearly all of ${RUNNERS}`);
  const { ours: own, ratio } = inTurn(ours, sort, ROUNDS);
  const work = '50,000 runners counted by 100 m of their course at a time of day, warm';
  report(work, 'time over sorting as many numbers', 1 / ratio, '×', 'at most', 0.5);
  report(work, 'time', own, ' ms');
}
