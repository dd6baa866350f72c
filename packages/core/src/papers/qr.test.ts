/** The code of a place, read back from its drawing by another library (jsQR). */
import jsqr from 'jsqr';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { geoUri, placeCode } from './qr.ts';

/** What a reader sees: the path's rectangles as pixels, `scale` to a millimetre. */
function pixelsOf(
  svg: string,
  width: number,
  scale: number,
): { readonly data: Uint8ClampedArray; readonly size: number } {
  const size = Math.round(width * scale);
  const data = new Uint8ClampedArray(size * size * 4).fill(255);
  for (const [, x, y, run, height] of svg.matchAll(/M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z/gu)) {
    const [left, top, right, bottom] = [Number(x), Number(y), Number(x) + Number(run), Number(y) + Number(height)];
    for (let row = Math.round(top * scale); row < Math.round(bottom * scale); row++)
      for (let column = Math.round(left * scale); column < Math.round(right * scale); column++)
        data.fill(0, (row * size + column) * 4, (row * size + column) * 4 + 3);
  }
  return { data, size };
}

const read = jsqr as unknown as (
  data: Uint8ClampedArray,
  width: number,
  height: number,
) => { readonly data: string } | null;

describe('The code of a place', () => {
  const places: readonly LonLat[] = [
    [-17.4254712, -33.2290623],
    [179.9999999, -0.0000004],
    [0, 89.9],
  ];

  it.each(places)('reads as its geo address (RFC 5870): %d, %d', (lon, lat) => {
    const { html } = placeCode([lon, lat], 15, 'Map');
    const { data, size } = pixelsOf(html, 15, 16);
    expect(read(data, size, size)?.data).toBe(geoUri([lon, lat]));
  });

  it('has latitude first, six decimals, and no exponent or minus zero', () => {
    expect(geoUri([-17.4254712, -33.2290623])).toBe('geo:-33.229062,-17.425471');
    expect(geoUri([-1e-9, 1e-9])).toBe('geo:0.000000,0.000000');
  });

  it('keeps four light modules round itself (ISO/IEC 18004)', () => {
    const { html } = placeCode([10, 20], 15, 'Map');
    const lefts = [...html.matchAll(/M([\d.]+) /gu)].map(([, x]) => Number(x));
    const module = Math.min(...[...html.matchAll(/h([\d.]+)v/gu)].map(([, run]) => Number(run)));
    expect(Math.min(...lefts)).toBeGreaterThanOrEqual(4 * module - 0.1);
  });
});
