/** A roster of people as a table: who, at which station, what they do, from when to when. Good rows come in, the others are told of. */
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { PersonInput } from '../plan/input.ts';
import type { Plan } from '../plan/plan.ts';
import { isPlan } from '../plan/shapes.ts';
import { year as english } from '../text/en/year.ts';
import { year as spanish } from '../text/es/year.ts';
import { foundOf } from '../text/found.ts';
import type { YearParams } from '../text/params/year.ts';
import { parseClock } from '../units.ts';
import { aText, want } from '../wants.ts';
import type { Cell } from '../delimited.ts';
import { type NamedRow, inLines, readNamed } from './namedTable.ts';
import { stationNamed } from './stationNamed.ts';
import { yearFinding } from './yearFinding.ts';

type Column = 'name' | 'station' | 'role' | 'from' | 'until' | 'phone';

const HEADS: Readonly<Record<Column, readonly string[]>> = {
  name: [english.name, spanish.name, 'full name', 'volunteer', 'nombre completo', 'nombre y apellidos', 'voluntario'],
  station: [english.station, spanish.station, 'station id', 'aid station', 'water station', 'avituallamiento'],
  role: [english.roster.role, spanish.roster.role, 'task', 'job', 'rol', 'función', 'puesto de trabajo'],
  from: [english.roster.from, spanish.roster.from, 'start', 'starts', 'in', 'inicio', 'entrada', 'llegada'],
  until: [english.roster.until, spanish.roster.until, 'to', 'end', 'ends', 'out', 'fin', 'salida'],
  phone: [english.roster.phone, spanish.roster.phone, 'telephone', 'mobile', 'tel', 'móvil'],
};

/**
 * The people of a table (comma, semicolon or tab; heads in English or Spanish) as a plan's `people.crew` takes them. A row with a
 * fault is left out, its place told; not ok where nobody can be read.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { findingLine, readRoster } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "name": "Pier", "at": [-30.06, 12.20004] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const roster = readRoster('Nombre;Puesto;Desde\nAda Tern;Pier;7:30\nIvo Skua;Quay;\n', 'crew.csv', read.value.plan);
 * roster.ok && roster.value; // → [{ name: 'Ada Tern', station: 's1', from: '07:30' }]
 * roster.findings.map(findingLine); // → ['crew.csv:3:10: Somebody is put at “Quay”, a station that the plan does not have. It has “s1 (Pier)”.']
 * ```
 */
export function readRoster(text: string, file: string, plan: Plan): Result<readonly PersonInput[]> {
  want('readRoster', 'text', aText, text);
  want('readRoster', 'file', aText, file);
  want('readRoster', 'plan', isPlan, plan);
  const table = readNamed<Column>(text, file, HEADS, ['name', 'station'], 'roster');
  const findings: Finding[] = [...table.findings];
  const people: PersonInput[] = [];
  const seen = new Map<string, number>();
  for (const row of table.rows) {
    const read = personOf(row, file, plan);
    findings.push(...read.findings);
    if (!read.ok) continue;
    const { name, station, from, until } = read.value;
    const key = JSON.stringify([name.toLowerCase(), station, from, until]);
    const line = seen.get(key);
    if (line === undefined) {
      seen.set(key, row.line);
      people.push(read.value);
    } else findings.push(fault(file, row, row.cell('name'), { problem: 'twice', line }));
  }
  const told = inLines(findings, file);
  if (people.length > 0) return good(people, told);
  const nobody = yearFinding('roster-unread', { problem: 'nobody' }, { severity: 'error', where: { file } });
  return bad(findings.some(({ severity }) => severity === 'error') ? told : [...told, nobody]);
}

type Row = NamedRow<Column>;

const fault = (file: string, row: Row, cell: Cell | undefined, params: YearParams['roster-unread']): Finding =>
  yearFinding('roster-unread', params, {
    severity: 'error',
    where: { file, line: cell?.line ?? row.line, column: cell?.column ?? row.column },
  });

/** "7:30" and "07.30" are written by people too. */
const clockText = (text: string): string =>
  text
    .trim()
    .replace(/^(\d{1,2})[:.h](\d{2})$/u, (_, hours: string, minutes: string) => `${hours.padStart(2, '0')}:${minutes}`);

function timeOf(
  row: Row,
  key: 'from' | 'until',
  file: string,
): Result<{ readonly text: string; readonly value: number } | null> {
  const cell = row.cell(key);
  if (cell === undefined || cell.text.trim() === '') return good(null);
  const text = clockText(cell.text);
  const parsed = parseClock(text);
  return parsed.ok
    ? good({ text, value: parsed.value })
    : bad([fault(file, row, cell, { problem: 'notTime', found: foundOf(cell.text.trim()) })]);
}

function personOf(row: Row, file: string, plan: Plan): Result<PersonInput> {
  const text = (key: Column): string => row.cell(key)?.text.trim() ?? '';
  const faults: Finding[] = [];
  if (text('name') === '') faults.push(fault(file, row, row.cell('name'), { problem: 'noName' }));
  const station = stationNamed(plan, text('station'));
  if (!station.ok) {
    const params: YearParams['roster-unread'] =
      text('station') === ''
        ? { problem: 'noStation' }
        : { problem: 'unknownStation', found: foundOf(text('station')), ...station.known };
    faults.push(fault(file, row, row.cell('station'), params));
  }
  const [from, until] = (['from', 'until'] as const).map((key) => timeOf(row, key, file));
  faults.push(...from!.findings, ...until!.findings);
  const [begins, ends] = [from, until].map((time) => (time!.ok && time!.value !== null ? time!.value : undefined));
  if (begins !== undefined && ends !== undefined && ends.value <= begins.value)
    faults.push(fault(file, row, row.cell('until'), { problem: 'backwards', from: begins.value, until: ends.value }));
  if (faults.length > 0 || !station.ok) return bad(faults);
  return good({
    name: text('name'),
    station: station.id,
    ...(text('role') === '' ? {} : { role: text('role') }),
    ...(begins === undefined ? {} : { from: begins.text }),
    ...(ends === undefined ? {} : { until: ends.text }),
    ...(text('phone') === '' ? {} : { phone: text('phone') }),
  });
}
