/**
 * A course from what the package gpxparser (3, MIT) has read, for tools that already hold its result. Types only: nothing of it is loaded.
 * gpxparser joins the segments of a track and leaves XML entities in names; a file read by `readGpx` keeps both apart.
 */
import type { Result } from '../finding.ts';
import type { Course } from './course.ts';
import { type ForeignLine, type ForeignOptions, columnsOf, courseOfLines, isForeignOptions } from './foreign.ts';
import { type Shape, aText, anything, listOf, maybe, orNull, recordOf, want } from '../wants.ts';

/** A track or route of gpxparser. */
export interface GpxParserLine {
  readonly name?: string | null;
  /** Degrees, and metres of elevation; `ele` is null where the file has none. */
  readonly points: readonly { readonly lat: number; readonly lon: number; readonly ele?: number | null }[];
}

/** A gpxparser after `parse`, or any record of this shape. */
export interface GpxParserResult {
  readonly tracks: readonly GpxParserLine[];
  readonly routes: readonly GpxParserLine[];
}

const isPoint: Shape = recordOf('a point', { lon: anything, lat: anything, ele: anything });
const isParsedLine: Shape = recordOf('a line of gpxparser', { name: maybe(orNull(aText)), points: listOf(isPoint) });
const isGpxParserResult: Shape = recordOf('what gpxparser has read', {
  tracks: listOf(isParsedLine),
  routes: listOf(isParsedLine),
});

/**
 * The course of one track or route, measured on WGS 84.
 * Errors: a point that is no position (gpxparser passes NaN on), no such line, fewer than two different points. As gpxparser joins
 * segments, a gap becomes a straight step of the course: steps far longer than the others give a warning.
 * @example
 * ```ts
 * import { courseFromGpxParser, courseLength } from '@halfcup/core/geometry';
 * const parsed = { tracks: [{ name: 'Lap', points: [{ lon: -17.4, lat: -33.2, ele: 4 }, { lon: -17.39, lat: -33.2, ele: 6 }] }], routes: [] };
 * const result = courseFromGpxParser(parsed);
 * result.ok && courseLength(result.value); // → 932.418
 * ```
 */
export function courseFromGpxParser(parsed: GpxParserResult, options: ForeignOptions = {}): Result<Course> {
  want('courseFromGpxParser', 'parsed', isGpxParserResult, parsed);
  want('courseFromGpxParser', 'options', isForeignOptions, options);
  const { tracks, routes } = parsed;
  return courseOfLines(
    { file: 'gpxparser', tracks: linesOf(tracks, 'track'), routes: linesOf(routes, 'route') },
    options,
  );
}

const linesOf = (lines: readonly GpxParserLine[], kind: 'track' | 'route'): ForeignLine[] =>
  lines.map(({ name, points }, k) => {
    const { segment, faults } = columnsOf(
      points.map((point, n) => ({ ...point, where: { path: `/${kind}s/${k}/points/${n}` } })),
    );
    return { kind, name: name ?? null, segments: [segment], faults };
  });
