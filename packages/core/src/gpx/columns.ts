/** A growing run of points in three columns, reused from one segment to the next: no object for each point. */

import type { GpxSegment } from './document.ts';

export interface Columns {
  readonly push: (lon: number, lat: number, ele: number) => void;
  /** The points since the last call as a segment of their own, or `null` where there were none. */
  readonly take: () => GpxSegment | null;
}

function grown(column: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(column.length * 2);
  larger.set(column);
  return larger;
}

/** Empty columns; they grow by doubling. */
export function createColumns(): Columns {
  let lon = new Float64Array(1024);
  let lat = new Float64Array(1024);
  let ele = new Float64Array(1024);
  let count = 0;

  return {
    push: (x, y, z) => {
      if (count === lon.length) [lon, lat, ele] = [grown(lon), grown(lat), grown(ele)];
      lon[count] = x;
      lat[count] = y;
      ele[count] = z;
      count += 1;
    },
    take: () => {
      if (count === 0) return null;
      const segment = { lon: lon.slice(0, count), lat: lat.slice(0, count), ele: ele.slice(0, count) };
      count = 0;
      return segment;
    },
  };
}
