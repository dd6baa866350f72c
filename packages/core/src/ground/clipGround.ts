/** Reads a street file of any kind as a stream and keeps what lies beside the courses. */
import { type Course, isCourse } from '../course/course.ts';
import { type Result, bad } from '../finding.ts';
import { type Shapes, aFunction, aText, anything, listOf, maybe, positive, recordOf, refuse, want } from '../wants.ts';
import { type ClippedGround, createGroundClipper } from './clipper.ts';
import { isBytes } from './format.ts';
import { groundFinding } from './groundFinding.ts';

/** Metres from a course within which the ground is kept. */
export const GROUND_REACH = 300;

/** What stops a reading: an AbortSignal, or anything alike. */
export interface StopSignal {
  readonly aborted: boolean;
  readonly reason?: unknown;
}

export interface ClipOptions {
  /** The file's name, for the findings only. */
  readonly file: string;
  /** The plan's courses, one at least. */
  readonly courses: readonly Course[];
  /** Metres from a course, 300 by default. */
  readonly within?: number;
  /** Called after each piece with how many bytes of the file have been read. */
  readonly onProgress?: (bytes: number) => void;
  /** The promise rejects with its reason soon after it is aborted. */
  readonly signal?: StopSignal;
}

const OPTIONS: Shapes<ClipOptions> = {
  file: aText,
  courses: listOf(isCourse),
  within: maybe(positive),
  onProgress: maybe(aFunction),
  signal: maybe(anything),
};
const isOptions = recordOf<ClipOptions>('options { file, courses }', OPTIONS);

/**
 * Reads a street file as it comes (OpenStreetMap XML or PBF, packed by gzip or not, or GeoJSON with OpenStreetMap's tags; told by its
 * content, not its name) and keeps streets, areas and points within 300 m of the courses, with the tags that Halfcup uses. Ways are cut
 * where they leave that distance and keep their ids; surfaces are kept whole, large ones cut to the courses' bounds. Of what lies
 * elsewhere about 20 bytes a node are held until the end. A file that is broken, foreign, over a limit, or holds nothing near the
 * courses gives findings. Rejects only with what the source rejects with, or with the signal's reason.
 * @example
 * ```ts
 * import { courseFromGeoJson } from '@halfcup/core/geojson';
 * import { clipGround } from '@halfcup/core/ground';
 * const course = courseFromGeoJson({ type: 'LineString', coordinates: [[-17.4, -33.2], [-17.39, -33.2]] });
 * const map = `<osm version="0.6"><node id="1" lat="-33.2" lon="-17.4"/><node id="2" lat="-33.2" lon="-17.39"/>
 *   <way id="7"><nd ref="1"/><nd ref="2"/><tag k="highway" v="residential"/></way></osm>`;
 * const bytes = Uint8Array.from(map, (character) => character.charCodeAt(0));
 * const read = course.ok ? await clipGround([bytes], { file: 'town.osm', courses: [course.value] }) : course;
 * read.ok && read.value.ground.ways.map(({ id, nodes }) => [id, nodes.length]); // → [['way/7', 2]]
 * ```
 */
export async function clipGround(
  bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
  options: ClipOptions,
): Promise<Result<ClippedGround>> {
  want('clipGround', 'options', isOptions, options);
  if (!isIterable(bytes))
    refuse('clipGround', 'bytes', { path: '', expected: 'a stream of Uint8Arrays', found: bytes });
  const { file, courses, within = GROUND_REACH, onProgress, signal } = options;
  if (courses.length === 0) return bad([groundFinding('ground-no-course', {}, { severity: 'error', where: {} })]);
  const clipper = createGroundClipper(file, courses, within);
  let read = 0;
  for await (const chunk of bytes) {
    if (signal?.aborted === true) throw signal.reason;
    if (!isBytes(chunk)) refuse('clipGround', 'bytes', { path: '', expected: 'a stream of Uint8Arrays', found: chunk });
    if (!clipper.write(chunk)) break;
    read += chunk.length;
    onProgress?.(read);
  }
  if (signal?.aborted === true) throw signal.reason;
  return clipper.close();
}

const isIterable = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && (Symbol.asyncIterator in value || Symbol.iterator in value);
