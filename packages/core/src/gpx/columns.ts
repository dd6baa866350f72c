/** A growing run of points in three columns: no object for each point. */

import type { GpxSegment } from './document.ts';

export interface Columns {
  lon: Float64Array<ArrayBuffer>;
  lat: Float64Array<ArrayBuffer>;
  ele: Float64Array<ArrayBuffer>;
  count: number;
}

const FIRST = 1024;

function grown(column: Float64Array, size: number): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(size);
  larger.set(column);
  return larger;
}

/** Empty columns; they grow by doubling. */
export const createColumns = (): Columns => ({
  lon: new Float64Array(FIRST),
  lat: new Float64Array(FIRST),
  ele: new Float64Array(FIRST),
  count: 0,
});

/** Adds one point. */
export function pushPoint(columns: Columns, lon: number, lat: number, ele: number): void {
  const { count } = columns;
  if (count === columns.lon.length) {
    columns.lon = grown(columns.lon, count * 2);
    columns.lat = grown(columns.lat, count * 2);
    columns.ele = grown(columns.ele, count * 2);
  }
  columns.lon[count] = lon;
  columns.lat[count] = lat;
  columns.ele[count] = ele;
  columns.count = count + 1;
}

/** The points since the last call as a segment of their own, or `null` where there were none. */
export function takeSegment(columns: Columns): GpxSegment | null {
  const { lon, lat, ele, count } = columns;
  if (count === 0) return null;
  columns.count = 0;
  return { lon: lon.slice(0, count), lat: lat.slice(0, count), ele: ele.slice(0, count) };
}
