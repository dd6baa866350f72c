/** Plain shapes of our own for a station's points, about 3 mm wide, black on white. */
import type { PointKind } from '../plan/plan.ts';
import { type Html } from './html.ts';
import { mm, svgPath } from './svg.ts';

const LOOK = 'fill="#fff" stroke="#000" stroke-width="0.45" stroke-linejoin="round"';

/** Path commands about the middle of the shape. */
const SHAPES: { readonly [kind in PointKind]: string } = {
  // A crate.
  drop: 'm-1.5 -1.2h3v2.4h-3zm0 0l3 2.4m0 -2.4l-3 2.4',
  // A way in: an arrowhead.
  access: 'm-1.5 -1.3l3 1.3l-3 1.3z',
  // A cross of equal arms.
  medical: 'm-0.5 -1.5h1v1h1v1h-1v1h-1v-1h-1v-1h1z',
  // A roof over a door.
  toilets: 'm-1.5 0l1.5 -1.5l1.5 1.5m-2.6 -0.2v1.6h2.2v-1.6',
  // A mast.
  radio: 'm0 1.5v-3m-1.3 0.6l1.3 -0.6l1.3 0.6m-2 0.7l0.7 -0.4l0.7 0.4',
  other: 'm-1 -1h2v2h-2z',
};

/** A point's shape at a place on paper. */
export const pointMark = (kind: PointKind, x: number, y: number): Html =>
  svgPath(`M${mm(x)} ${mm(y)}${SHAPES[kind]}`, LOOK);
