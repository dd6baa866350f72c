/** A place as a QR code (ISO/IEC 18004) of its `geo:` address (RFC 5870), for the map of whatever telephone reads it. */
import { encode } from 'uqr';
import type { LonLat } from '../finding.ts';
import { type Html } from './html.ts';
import { positionText } from './sheet.ts';
import { mm, svgFrame, svgPath } from './svg.ts';

/** Light modules round the code that a reader needs (ISO/IEC 18004, 5.3.8). */
const QUIET = 4;

/** WGS 84, latitude first (RFC 5870, 3.4.2), to about 0.1 m. */
export const geoUri = (at: LonLat): string => `geo:${positionText(at).replace(', ', ',')}`;

/** The code, `width` millimetres wide with its quiet zone, and what it is in words. */
export function placeCode(at: LonLat, width: number, label: string): Html {
  const { data, size } = encode(geoUri(at), { ecc: 'M', border: 0 });
  const unit = width / (size + 2 * QUIET);
  // One path of a run of dark modules a row: no hairlines between squares.
  const rows = data.map((row, y) => {
    const runs: string[] = [];
    for (let x = 0; x < size; x++) {
      if (!row[x] || row[x - 1] === true) continue;
      let end = x;
      while (row[end]) end++;
      runs.push(
        `M${mm((x + QUIET) * unit)} ${mm((y + QUIET) * unit)}h${mm((end - x) * unit)}v${mm(unit)}h${mm(-(end - x) * unit)}z`,
      );
    }
    return runs.join('');
  });
  return svgFrame(width, width, label, [svgPath(rows.join(''), 'fill="#000" shape-rendering="crispEdges"')], 'qr');
}
