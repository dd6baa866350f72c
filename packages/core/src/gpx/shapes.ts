/** The shapes of what GPX is read into and written from. */
import { type Shape, aText, column, either, finite, listOf, maybe, oneOf, orNull, recordOf } from '../wants.ts';
import type { GpxDocument, GpxLine, GpxSegment, GpxWaypoint } from './document.ts';

/** Columns of whatever length. */
export const isColumns: Shape = recordOf<GpxSegment>('a segment { lon, lat, ele } of Float64Arrays', {
  lon: column,
  lat: column,
  ele: column,
});

/** Columns of equal length. */
export const isSegment: Shape = (value) => {
  const found = isColumns(value);
  if (found !== null) return found;
  const { lon, lat, ele } = value as GpxSegment;
  if (lat.length === lon.length && ele.length === lon.length) return null;
  const lengths = `lengths ${lon.length}, ${lat.length} and ${ele.length}`;
  return { path: '', expected: 'columns lon, lat and ele of equal length', found: lengths, range: true };
};

const textOrNull: Shape = orNull(aText);
const numberOrNull: Shape = orNull(finite);

export const isGpxLine: Shape = recordOf<Pick<GpxLine, 'kind' | 'name' | 'segments'>>('a track or route', {
  kind: oneOf('track', 'route'),
  name: textOrNull,
  segments: listOf(isSegment),
});

const isWaypoint: Shape = recordOf<GpxWaypoint>('a waypoint', {
  lon: finite,
  lat: finite,
  ele: numberOrNull,
  name: textOrNull,
  comment: textOrNull,
  description: textOrNull,
  symbol: textOrNull,
  type: textOrNull,
  hdop: numberOrNull,
  line: finite,
  column: finite,
});

export const isLineSource: Shape = recordOf('the document that readGpx gives', {
  file: aText,
  tracks: listOf(isGpxLine),
  routes: listOf(isGpxLine),
});

export const isGpxDocument: Shape = recordOf<GpxDocument>('the document that readGpx gives', {
  file: aText,
  version: textOrNull,
  creator: textOrNull,
  name: textOrNull,
  tracks: listOf(isGpxLine),
  routes: listOf(isGpxLine),
  waypoints: listOf(isWaypoint),
});

/** A line's name, or its index. */
export const isTrackChoice: Shape = maybe(either(finite, aText));
