/** Who is where, found runner by runner from small steps of the model: nothing of `whereabouts.ts`. Not part of the package. */
import type { Analysis } from '../analyse.ts';
import type { RaceRunners } from '../questions.ts';
import { timeAt } from '../raceday/pace.ts';
import { sweepAt } from '../raceday/sweep.ts';

const STEP = 5;

/** As `runnersAt` for the first race of a plan on level road. A runner is stopped where the sweep is ahead at any of many places so far. */
export function plainDay(analysis: Analysis, time: number): RaceRunners {
  const { field, sweep, ends } = analysis.kept!.fields!.races[0]!;
  const spacing = analysis.spacing[0]!;
  const marks = [ends[0], ...spacing.legs.slice(0, -1).map(({ end }) => end), ends[1]];
  const counts = { waiting: 0, started: 0, onRoad: 0, finished: 0, stopped: 0 };
  const on = spacing.legs.map(() => 0);
  for (let i = 0; i < field.start.length; i++) {
    const at = (measure: number): number =>
      field.start[i]! + timeAt(measure - ends[0], ends[1] - ends[0], field.finish[i]!, field.slow[i]!);
    if (field.start[i]! > time) {
      counts.waiting++;
      continue;
    }
    counts.started++;
    let caught = false;
    if (sweep !== null)
      for (let measure = ends[0]; measure <= ends[1]; measure = Math.min(measure + STEP, ends[1])) {
        const due = sweepAt(sweep, measure);
        if (due > time) break;
        if (at(measure) > due) caught = true;
        if (measure === ends[1]) break;
      }
    if (caught) counts.stopped++;
    else if (at(ends[1]) <= time) counts.finished++;
    else {
      counts.onRoad++;
      on[marks.findLastIndex((mark, k) => k < on.length && (k === 0 || at(mark) <= time))]!++;
    }
  }
  const stretches = spacing.legs.map(({ from, to }, k) => ({
    from,
    to,
    along: [marks[k]!, marks[k + 1]!] as const,
    runners: on[k]!,
  }));
  return { race: field.race.id, ...counts, stretches };
}
