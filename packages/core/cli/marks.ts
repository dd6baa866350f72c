/** Marks as a call gives them: `LON,LAT=10km`, `NAME=10km`, or the `NAME` of a waypoint that is named by a distance. */
import type { Mark } from '../src/course/calibrate.ts';
import { type Finding, type Result, bad, good } from '../src/finding.ts';
import type { GpxDocument, GpxWaypoint } from '../src/gpx/document.ts';
import { type MarkText, marksOfWaypoints, nearlyMarks, resolveMarks } from '../src/plan/marks.ts';
import { parseLength } from '../src/units.ts';
import { type Call, has, refuse } from './call.ts';
import { POINTS } from './messages.ts';
import { parsePosition } from './positions.ts';

/** All marks of a call, with their places; with `--waypoint-marks` a note for each waypoint that only speaks of a distance. */
export function marksOf(call: Call, document: GpxDocument): Result<readonly Mark[]> {
  const texts = (call.lists.get('mark') ?? []).map(markText);
  const wrong = texts.flatMap((text) => (text.ok ? [] : text.findings));
  if (wrong.length > 0) return bad(wrong);
  const named = resolveMarks(
    texts.flatMap((text) => (text.ok ? [text.value] : [])),
    document,
    () => ({ file: document.file }),
  );
  if (!named.ok || !has(call, 'waypoint-marks')) return named;
  const found = marksOfWaypoints(document);
  if (found.length > 0)
    return good(
      [...named.value, ...found],
      nearlyMarks(document).map((waypoint) => leftAside(waypoint, document.file)),
    );
  const near = nearlyMarks(document).map(({ name }) => `"${name}"`);
  return refuse(POINTS.noWaypointMarks(near));
}

function leftAside({ name, line, column }: GpxWaypoint, file: string): Finding {
  return {
    code: 'mark-unused',
    severity: 'note',
    message: POINTS.waypointLeftAside(name ?? ''),
    where: { file, line, column },
  };
}

const LOOKS_LIKE_A_PLACE = /^[+-]?[\d.]+,[+-]?[\d.]+$/u;

function markText(token: string): Result<MarkText> {
  const cut = token.lastIndexOf('=');
  const place = cut === -1 ? token : token.slice(0, cut);
  const measure = cut === -1 ? undefined : parseLength(token.slice(cut + 1));
  if (measure?.ok === false) return refuse(POINTS.markProblem(token, measure.message));
  const known = measure === undefined ? {} : { measure: measure.value };
  if (!LOOKS_LIKE_A_PLACE.test(place)) return good({ name: place, ...known });
  const position = parsePosition(place);
  if (!position.ok) return position;
  return measure === undefined
    ? refuse(POINTS.markWithoutDistance(token))
    : good({ at: position.value, measure: measure.value });
}
