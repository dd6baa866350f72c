/** Races as they are typed, read into what a plan writes. */
import { type Finding, type Result, bad, good } from '../../finding.ts';
import { foundOf } from '../../text/found.ts';
import type { PlanParams } from '../../text/params/plan.ts';
import {
  type Metres,
  type Seconds,
  type UnitSystem,
  metres,
  parseClock,
  parseDuration,
  parseLength,
} from '../../units.ts';
import { aText, maybe, positive, want } from '../../wants.ts';
import { isUnits } from '../shapes.ts';
import { planFinding } from '../fault.ts';
import { type RaceAnswers, isRaceAnswers } from './answers.ts';
import { typedCount } from './count.ts';
import { type RunsOn, raceLength } from './parts.ts';

type Entry = Readonly<Record<string, unknown>>;
type Field = Exclude<keyof RaceAnswers, 'gpx'>;

/** Paces of typical runners of road races, seconds a metre, with room on both sides (an assumption). */
const FASTEST = 120 / 1000;
const SLOWEST = 1800 / 1000;
/** Standard deviation of ln time about the typical time (common practice, no source). */
const SPREAD = 0.2;

/** Hours and minutes, or what `parseDuration` reads. */
function timeOf(text: string): Seconds | null {
  const short = /^(\d{1,2}):([0-5]\d)$/u.exec(text.trim());
  if (short !== null) return Number(short[1]) * 3600 + Number(short[2]) * 60;
  const parsed = parseDuration(text.trim());
  return parsed.ok && parsed.value > 0 ? parsed.value : null;
}

const clockOf = (text: string): Seconds | null => {
  const parsed = parseClock(text);
  return parsed.ok ? parsed.value : null;
};

/** H:MM:SS. */
const durationText = (seconds: Seconds): string =>
  [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, Math.round(seconds % 60)]
    .map((part, k) => (k === 0 ? `${part}` : `${part}`.padStart(2, '0')))
    .join(':');

/** HH:MM, with seconds where there are any. */
const clockText = (seconds: Seconds): string => {
  const [h, m, s] = durationText(seconds).split(':');
  return `${h!.padStart(2, '0')}:${m!}${s === '00' ? '' : `:${s!}`}`;
};

/** Metres over 0; a plain number is km, or miles. */
function farOf(text: string, units: UnitSystem): Metres | null {
  const plain = text.replace(',', '.');
  const bare = /^\d+(\.\d+)?$/u.test(plain);
  const parsed = parseLength(bare ? metres(Number(plain), units === 'imperial' ? 'mi' : 'km') : plain);
  return parsed.ok && parsed.value > 0 ? parsed.value : null;
}

const lapsOf = (text: string): number | null => (/^[1-9]\d?$/u.test(text) ? Number(text) : null);

interface Read {
  readonly runs: RunsOn;
  readonly start: Seconds | null;
  readonly finish: Seconds | null;
  readonly cutoff: Seconds | null;
  readonly findings: readonly Finding[];
}

const filled = (text: string | undefined): string | undefined => (text?.trim() === '' ? undefined : text?.trim());

interface About {
  /** Of the course, metres. */
  readonly length: Metres | undefined;
  readonly units: UnitSystem;
}

function read(race: RaceAnswers, path: string, { length: whole, units }: About): Read {
  const findings: Finding[] = [];
  const fault = (field: Field, params: PlanParams['setup-race']): null => {
    findings.push(planFinding('setup-race', params, { severity: 'error', where: { path: `${path}/${field}` } }));
    return null;
  };
  const wrong = (field: Exclude<Field, 'name'>, text: string): null =>
    fault(field, { problem: 'value', field, found: foundOf(text) });
  const value = (field: Exclude<Field, 'name'>, parse: (text: string) => number | null): number | null => {
    const text = filled(race[field]);
    return text === undefined ? null : (parse(text) ?? wrong(field, text));
  };
  if (race.name.trim() === '') fault('name', { problem: 'noName' });
  const turnAt = value('turnAt', (text) => farOf(text, units));
  const laps = value('laps', lapsOf);
  if (filled(race.turnAt) !== undefined && filled(race.laps) !== undefined) fault('laps', { problem: 'twoShapes' });
  if (turnAt !== null && whole !== undefined && turnAt > whole)
    fault('turnAt', { problem: 'turnPast', measure: turnAt, length: whole });
  const runs = { ...(turnAt === null ? {} : { turnAt }), ...(laps === null ? {} : { laps }) };
  const length = whole === undefined ? undefined : raceLength(runs, whole);
  const start = value('start', clockOf);
  const entrants = value('entrants', (text) => typedCount(text) || null);
  const finish = value('finish', timeOf);
  const after = value('cutoff', timeOf);
  const at = value('cutoffAt', clockOf);
  if (filled(race.start) === undefined && entrants !== null) fault('start', { problem: 'noStart', of: 'entrants' });
  if (filled(race.start) === undefined && after !== null) fault('start', { problem: 'noStart', of: 'cutoff' });
  if (filled(race.entrants) === undefined && start !== null) fault('entrants', { problem: 'noEntrants' });
  if (filled(race.cutoff) !== undefined && filled(race.cutoffAt) !== undefined)
    fault('cutoffAt', { problem: 'twoCutoffs' });
  if (at !== null && start !== null && at <= start) fault('cutoffAt', { problem: 'cutoffFirst', start, cutoff: at });
  for (const [field, time] of [
    ['finish', finish],
    ['cutoff', after],
  ] as const)
    if (
      time !== null &&
      length !== undefined &&
      (time < FASTEST * length || (field === 'finish' && time > SLOWEST * length))
    )
      fault(field, { problem: 'pace', field, time, length, found: foundOf(filled(race[field]) ?? '') });
  return { runs, start, finish, cutoff: at ?? (after === null || start === null ? null : start + after), findings };
}

/**
 * What is wrong with a race as it is typed, field by field: `where.path` ends with the field's name. `length`: of its course,
 * metres; with it, times that nobody runs are found, such as minutes and seconds taken for hours and minutes. `units`: of a
 * distance without a unit; absent: metric.
 * @example
 * ```ts
 * import { raceFaults } from '@halfcup/core/plan';
 * raceFaults({ name: 'Five', gpx: 'five.gpx', start: '8 am', entrants: '300', finish: '28:30' }, 5000)
 *   .map(({ where, message }) => `${where.path}: ${message}`); // → ['/start: “8 am” is not a start time. It should be a time of day such as 08:00.', '/finish: “28:30” is 28:30:00 for 5.00 km, which nobody takes. With one colon a time is hours and minutes. Write minutes and seconds as 0:28:30.']
 * ```
 */
export function raceFaults(race: RaceAnswers, length?: Metres, units?: UnitSystem): readonly Finding[] {
  want('raceFaults', 'race', isRaceAnswers, race);
  want('raceFaults', 'length', maybe(positive), length);
  want('raceFaults', 'units', maybe(isUnits), units);
  return read(race, '', { length, units: units ?? 'metric' }).findings;
}

/** A race as the plan writes it, without its id and course, and how it runs on its course. */
export interface RaceEntry {
  readonly entry: Entry;
  readonly runs: RunsOn;
}

/** `path` begins those of its findings; `length`: of its course, metres. */
export function raceEntry(race: RaceAnswers, path: string, length: Metres, units: UnitSystem): Result<RaceEntry> {
  want('raceEntry', 'path', aText, path);
  const { runs, start, finish, cutoff, findings } = read(race, path, { length, units });
  if (findings.length > 0) return bad(findings);
  const entry = {
    ...(start === null ? {} : { waves: [{ time: clockText(start), entrants: typedCount(race.entrants ?? '') }] }),
    ...(finish === null ? {} : { finish: { median: durationText(finish), spread: SPREAD } }),
    ...(cutoff === null ? {} : { cutoff: clockText(cutoff) }),
  };
  return good({ entry, runs });
}
