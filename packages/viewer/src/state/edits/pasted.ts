/** Rows of a spreadsheet as stations: those of a name that the plan has change that station, the others are added, all as one step. */
import type { Finding, StationLayout } from '@halfcup/core';
import { courseLength, startMeasure } from '@halfcup/core/geometry';
import { readStationList, type ListedStation, type Units } from '@halfcup/core/plan';
import { parseLength } from '@halfcup/core/units';
import type { OpenPlan } from '../store/store.ts';
import { leadOf } from '../view/derive.ts';
import { setOfStation, setValue, together, type Command } from './edits.ts';
import { freeId } from './freeId.ts';

export interface Pasted {
  /** `null` where no row can be used. */
  readonly command: Command | null;
  readonly added: number;
  readonly changed: number;
  /** Of rows that were left out, and of what was assumed. */
  readonly findings: readonly Finding[];
}

type Row = ListedStation['station'];

/** Metres by which a place may differ and be the same: rows are copied out to the metre. */
const SAME = 1;

/** Whether a row says the place that the station has already. */
function isThere({ on }: Row, station: StationLayout): boolean {
  const lead = leadOf(station);
  const read = parseLength(on?.measure);
  return (
    on !== undefined &&
    lead !== undefined &&
    read.ok &&
    on.course === lead.course &&
    on.side === lead.side &&
    Math.abs(read.value - lead.measure) <= SAME
  );
}

function change(station: StationLayout, row: Row): Command[] {
  const { id: _id, name: _name, on, at, ...rest } = row;
  const { id } = station;
  const set = Object.entries(rest).map(([key, value]) => setOfStation(id, [key], value, ''));
  if (isThere(row, station) || (on === undefined && at === undefined)) return set;
  const place =
    on === undefined
      ? [setOfStation(id, ['on'], undefined, ''), setOfStation(id, ['at'], at, '')]
      : [
          setOfStation(id, ['at'], undefined, ''),
          setOfStation(id, ['on'], on, ''),
          setOfStation(id, ['side'], on.side, ''),
        ];
  return [...place, ...set];
}

/** What pasting a text does to the plan. `units`: of figures without a unit. */
export function pastedRows(open: OpenPlan, text: string, units: Units): Pasted {
  const courses = open.analysis.courses.map(({ course }) => ({
    id: course.id,
    name: course.name,
    start: startMeasure(course),
    length: courseLength(course),
  }));
  const read = readStationList(text, { file: 'pasted rows', units, courses });
  if (!read.ok) return { command: null, added: 0, changed: 0, findings: read.findings };
  const ids = open.document.plan.stations.map(({ id }) => id);
  const commands: Command[] = [];
  let [added, changed] = [0, 0];
  for (const { station: row } of read.value) {
    const same = open.analysis.stations.filter(({ name }) => name === row.name);
    if (same.length === 1 && open.variant === null) {
      commands.push(...change(same[0]!, row));
      changed++;
    } else {
      const id = row.id !== undefined && !ids.includes(row.id) ? row.id : freeId('s', ids);
      ids.push(id);
      commands.push(setValue(['stations', '-'], { ...row, id }, ''));
      added++;
    }
  }
  const command = commands.length === 0 ? null : together('paste rows', commands);
  return { command, added, changed, findings: read.findings };
}
