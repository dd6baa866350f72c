/** `halfcup snap`: every pass of a course by points, or by the waypoints of its file. */
import { swappedPosition } from '../../src/course/swapped.ts';
import { PASS_DEFAULTS, nearestOn, passesOf } from '../../src/course/passes.ts';
import { type IndexedCourse, indexCourse } from '../../src/course/segmentIndex.ts';
import { type SnappedPoint, snapDocument } from '../../src/export/documents.ts';
import { type Finding, type LonLat, type Result, bad, good } from '../../src/finding.ts';
import { type Call, type Run, has, lengthOf } from '../call.ts';
import { type ReadCourse, readCourse } from '../lines.ts';
import { POINTS } from '../messages.ts';
import { parsePosition } from '../positions.ts';
import { json, unitsOf } from '../printing.ts';
import { snapText } from '../text/snap.ts';

type NamedPoint = Pick<SnappedPoint, 'at' | 'name'>;

export const run: Run = async (call, io) => {
  const [file, ...tokens] = call.positionals;
  const given = positionsOf(tokens);
  if (!given.ok) return given;
  const read = await readCourse(io, file!, call);
  if (!read.ok) return read;
  const points = pointsOf(given.value, read.value);
  if (!points.ok) return points;
  const indexed = indexCourse(read.value.course);
  const options = optionsOf(call);
  const snapped = points.value.map(({ at, name }) => ({
    at,
    name,
    passes: passesOf(indexed, at, options),
    nearest: nearestOn(indexed, at),
  }));
  const document = snapDocument(snapped);
  const notes = [
    ...read.findings.filter(({ severity }) => severity !== 'note'),
    ...snapped.flatMap((point) => swapped(point, indexed)),
  ];
  return good({
    text: has(call, 'json')
      ? json(document)
      : (screen) => snapText(document, options.snapRadius, unitsOf(call), screen),
    notes,
  });
};

/** Says where a point is far from the course, and the same two numbers the other way round are not. */
function swapped({ at, nearest }: SnappedPoint, indexed: IndexedCourse): Finding[] {
  const turned = swappedPosition(indexed, at);
  if (turned === null) return [];
  const message = POINTS.mayBeSwapped(at.join(','), (nearest.distance / 1000).toFixed(0), turned.join(','));
  return [{ code: 'snap-swapped', severity: 'warning', message, where: {} }];
}

function positionsOf(tokens: readonly string[]): Result<readonly LonLat[]> {
  const parsed = tokens.map(parsePosition);
  const positions = parsed.flatMap((one) => (one.ok ? [one.value] : []));
  return positions.length === tokens.length ? good(positions) : bad(parsed.flatMap((one) => one.findings));
}

function pointsOf(given: readonly LonLat[], { document }: ReadCourse): Result<readonly NamedPoint[]> {
  if (given.length > 0) return good(given.map((at) => ({ at, name: null })));
  if (document.waypoints.length > 0)
    return good(document.waypoints.map(({ lon, lat, name }) => ({ at: [lon, lat], name })));
  return bad([{ code: 'snap-points', severity: 'error', message: POINTS.none(), where: { file: document.file } }]);
}

const optionsOf = (call: Call): typeof PASS_DEFAULTS => ({
  ...PASS_DEFAULTS,
  snapRadius: lengthOf(call, 'radius') ?? PASS_DEFAULTS.snapRadius,
  pinR95: lengthOf(call, 'r95') ?? PASS_DEFAULTS.pinR95,
  courseR95: lengthOf(call, 'course-r95') ?? PASS_DEFAULTS.courseR95,
});
