/** Marks as a call gives them: `LON,LAT=10km`, `NAME=10km`, or the `NAME` of a waypoint that says a distance. */
import type { Mark } from '../src/course/calibrate.ts';
import { type Finding, type Result, bad, good } from '../src/finding.ts';
import type { GpxDocument, GpxWaypoint } from '../src/gpx/document.ts';
import { type MarkText, marksOfWaypoints, nearlyMarks, resolveMarks } from '../src/plan/marks.ts';
import { parseLength } from '../src/units.ts';
import { type Call, has, refuse } from './call.ts';
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
  const hint =
    near.length === 0
      ? ''
      : `; ${near.slice(0, 5).join(', ')} may be meant: say --mark with the name and the distance, such as --mark ${near[0]}=10km`;
  return refuse(
    `--waypoint-marks: no waypoint of the file has a name that says a distance and nothing else, such as "10 km" or "mile 6"${hint}`,
  );
}

function leftAside({ name, line, column }: GpxWaypoint, file: string): Finding {
  const message = `Waypoint "${name}" speaks of a distance, but not of that alone, and was not taken as a mark; where it is one, say --mark "${name}=…" with the distance.`;
  return { code: 'mark-unused', severity: 'note', message, where: { file, line, column } };
}

const LOOKS_LIKE_A_PLACE = /^[+-]?[\d.]+,[+-]?[\d.]+$/u;

function markText(token: string): Result<MarkText> {
  const cut = token.lastIndexOf('=');
  const place = cut === -1 ? token : token.slice(0, cut);
  const measure = cut === -1 ? undefined : parseLength(token.slice(cut + 1));
  if (measure?.ok === false) return refuse(`--mark "${token}": ${measure.message}`);
  const known = measure === undefined ? {} : { measure: measure.value };
  if (!LOOKS_LIKE_A_PLACE.test(place)) return good({ name: place, ...known });
  const position = parsePosition(place);
  if (!position.ok) return position;
  return measure === undefined
    ? refuse(`--mark "${token}": found a place without a distance; expected LON,LAT=10km`)
    : good({ at: position.value, measure: measure.value });
}
