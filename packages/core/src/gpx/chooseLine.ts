/** Which of the tracks and routes of a file is meant. */
import { type Finding, type Result, type Where, bad, good } from '../finding.ts';
import type { GpxLine } from './document.ts';

/** A line to choose from: of a GPX file, or made of what another reader holds. */
export type NamedLine = Pick<GpxLine, 'kind' | 'name' | 'segments'> & Partial<Pick<GpxLine, 'line' | 'column'>>;

/** What lines are chosen from; `file` is its name in messages. */
export interface LineSource<Line extends NamedLine = NamedLine> {
  readonly file: string;
  readonly tracks: readonly Line[];
  readonly routes: readonly Line[];
}

const pointsOf = (line: NamedLine): number => line.segments.reduce((sum, segment) => sum + segment.lon.length, 0);

const hasPoints = (line: NamedLine): boolean => pointsOf(line) > 0;

const listed = (lines: readonly NamedLine[]): string =>
  lines.map((line, k) => `${k}: ${line.name === null ? `${line.kind} without a name` : `"${line.name}"`}`).join(', ');

/**
 * The line of a GPX file that is the course: the one that `track` names, by its name or its index over tracks, then routes.
 * Without `track` the first with more points than one, and a note where there are others. `where`: what findings point at.
 * Errors: no line, no such line, a name that two lines have.
 * @example
 * ```ts
 * import { chooseLine, readGpx } from '@halfcup/core/gpx';
 * const gpx = readGpx(`<gpx version="1.1" creator="me"><rte><name>Lagoon loop</name>
 *   <rtept lat="-33.2" lon="-17.4"/><rtept lat="-33.2" lon="-17.36"/></rte></gpx>`, 'loop.gpx');
 * if (!gpx.ok) throw new Error(gpx.findings[0]?.message);
 * const line = chooseLine(gpx.value, 'Lagoon loop', { file: 'loop.gpx' });
 * line.ok && line.value.segments[0]?.lon; // → [-17.4, -17.36]
 * ```
 */
export function chooseLine<Line extends NamedLine>(
  document: LineSource<Line>,
  track: string | number | undefined,
  where: Where,
): Result<Line> {
  const lines = [...document.tracks, ...document.routes];
  const fail = (message: string): Result<Line> => bad([{ code: 'track-unknown', severity: 'error', message, where }]);
  // The place that is printed before the message has the file's name already.
  const file = where.file === undefined ? document.file : 'The file';
  if (track === undefined) {
    const usable = lines.filter(hasPoints);
    if (usable.length === 0) return fail(`${file} has no track or route with points; expected one to be the course.`);
    const taken = usable.find((line) => pointsOf(line) > 1) ?? usable[0]!;
    return good(taken, usable.length > 1 ? [chosenFinding(document, lines, taken)] : []);
  }
  const named = lines.filter((line) => line.name === track);
  if (named.length > 1)
    return fail(`${file} has ${named.length} lines named "${track}"; say which by index: ${listed(lines)}.`);
  const line = named[0] ?? lines[/^\d+$/.test(String(track)) ? Number(track) : -1];
  if (line === undefined)
    return fail(`${file} has no line "${track}"; it has ${lines.length === 0 ? 'none' : listed(lines)}.`);
  return hasPoints(line)
    ? good(line)
    : fail(`Line "${track}" of ${file === 'The file' ? 'the file' : file} has no points.`);
}

function chosenFinding({ file }: LineSource, lines: readonly NamedLine[], line: NamedLine): Finding {
  const message = `The file has ${lines.length} lines (${listed(lines)}); took ${lines.indexOf(line)}. Name another as the track where that is wrong.`;
  const at = line.line === undefined || line.column === undefined ? {} : { line: line.line, column: line.column };
  return { code: 'track-chosen', severity: 'note', message, where: { file, ...at } };
}
