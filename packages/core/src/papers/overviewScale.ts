/** The scale bar and the north arrow of the map of all courses. */
import { formatLength } from '../format.ts';
import type { Units } from '../plan/plan.ts';
import type { SheetText } from '../text/sheetText.ts';
import { lengthIn, metres } from '../units.ts';
import { type Html, html } from './html.ts';
import { mm, niceLength, svgPath, svgText } from './svg.ts';

const SIZE = 9;

interface Paper {
  readonly units: Units;
  readonly text: SheetText;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
}

/** `scale`: millimetres for a metre; `turnDeg`: by how many degrees the map is turned clockwise. */
export function northAndScale(
  { scale, turnDeg }: { readonly scale: number; readonly turnDeg: number },
  { units, width, height, text }: Paper,
): Html {
  const unit = units === 'metric' ? 'm' : 'mi';
  const length = metres(niceLength(lengthIn(40 / scale, unit)), unit);
  const shown =
    units === 'metric' && length < 1000
      ? formatLength(length, units, 'wheel')
      : formatLength(
          length,
          units,
          'long',
          Math.max(0, -Math.floor(Math.log10(lengthIn(length, units === 'metric' ? 'km' : 'mi')) + 1e-9)),
        );
  const y = height - 3;
  return html`<rect x="1" y="${mm(y - 6)}" width="${mm(length * scale + 6)}" height="8" fill="#fff"/>${svgPath(`M3 ${mm(y - 1.6)}v1.6h${mm(length * scale)}v-1.6`, 'stroke="#000" stroke-width="0.5" fill="none"')}${svgText(4, y - 1.4, shown, { points: SIZE })}
<rect x="${mm(width - 10.5)}" y="1" width="10" height="14" fill="#fff"/><g data-turn="${turnDeg}" transform="translate(${mm(width - 5.5)} 6) rotate(${turnDeg})">${svgPath('M0 -4.5l2.2 7l-2.2 -1.6l-2.2 1.6z', 'fill="#000"')}</g>${svgText(width - 5.5, 14, text.lists.overview.north, { points: SIZE, bold: true, anchor: 'middle' })}`;
}
