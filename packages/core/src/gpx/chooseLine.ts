/** Which of the tracks and routes of a file is meant. */
import { type Finding, type Result, type Where, bad, good, isWhere } from '../finding.ts';
import type { TrackParams, LineName } from '../text/params/gpx.ts';
import type { GpxLine } from './document.ts';
import { trackFinding } from './trackFinding.ts';
import { excerpt } from './trouble.ts';
import { want } from '../wants.ts';
import { isLineSource, isTrackChoice } from './shapes.ts';

/** A line to choose from: of a GPX file, or made of what another reader holds. */
export type NamedLine = Pick<GpxLine, 'kind' | 'name' | 'segments'> & Partial<Pick<GpxLine, 'line' | 'column'>>;

/** What lines are chosen from; `file` is its name in findings. */
export interface LineSource<Line extends NamedLine = NamedLine> {
  readonly file: string;
  readonly tracks: readonly Line[];
  readonly routes: readonly Line[];
}

const pointsOf = (line: NamedLine): number => line.segments.reduce((sum, segment) => sum + segment.lon.length, 0);

const hasPoints = (line: NamedLine): boolean => pointsOf(line) > 0;

/** So many lines are named in a sentence. */
const NAMED = 8;

const choiceOf = (lines: readonly NamedLine[]): { readonly lines: readonly LineName[]; readonly count: number } => ({
  lines: lines.slice(0, NAMED).map(({ kind, name }) => ({ kind, name: name === null ? null : excerpt(name) })),
  count: lines.length,
});

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
  want('chooseLine', 'document', isLineSource, document);
  want('chooseLine', 'track', isTrackChoice, track);
  want('chooseLine', 'where', isWhere, where);
  const lines = [...document.tracks, ...document.routes];
  // A place with the file's name is shown in front of the sentence, which then need not repeat it.
  const file = where.file === undefined ? document.file : null;
  const fail = (params: TrackParams['track-unknown']): Result<Line> =>
    bad([trackFinding('track-unknown', params, { severity: 'error', where })]);
  if (track === undefined) {
    const usable = lines.filter(hasPoints);
    if (usable.length === 0) return fail({ file, problem: 'none' });
    const taken = usable.find((line) => pointsOf(line) > 1) ?? usable[0]!;
    return good(taken, usable.length > 1 ? [chosenFinding(document, lines, taken)] : []);
  }
  const named = lines.filter((line) => line.name === track);
  const asked = excerpt(String(track));
  if (named.length > 1)
    return fail({ file, problem: 'ambiguous', track: asked, same: named.length, ...choiceOf(lines) });
  const line = named[0] ?? lines[/^\d+$/.test(String(track)) ? Number(track) : -1];
  if (line === undefined) return fail({ file, problem: 'unknown', track: asked, ...choiceOf(lines) });
  return hasPoints(line) ? good(line) : fail({ file, problem: 'empty', track: asked });
}

function chosenFinding({ file }: LineSource, lines: readonly NamedLine[], line: NamedLine): Finding {
  const at = line.line === undefined || line.column === undefined ? {} : { line: line.line, column: line.column };
  const params = { ...choiceOf(lines), taken: lines.indexOf(line) };
  return trackFinding('track-chosen', params, { severity: 'note', where: { file, ...at } });
}
