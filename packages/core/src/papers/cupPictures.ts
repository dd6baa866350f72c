/** Two small drawings of how a cup is held for a runner to take it, lines only. Common practice, no source. */
import { type Html } from './html.ts';
import { svgFrame, svgPath } from './svg.ts';

const INK = 'fill="#fff" stroke="#000" stroke-width="0.5" stroke-linejoin="round" stroke-linecap="round"';

/** A cup half full: wider at the rim, its foot at `y`. */
const cup = (x: number, y: number): Html => svgPath(`M${x - 4} ${y - 11}l1.2 11h5.6l1.2 -11zm0.6 5.5h6.8`, INK);

/** From above by the rim, thumb and one finger. */
export const rimPicture = (label: string): Html =>
  svgFrame(
    34,
    20,
    label,
    [
      cup(9, 18.6),
      // The hand comes in from the right, over the cup: the back of it, a finger down outside the far rim, the thumb down the near one.
      svgPath(
        'M33.2 2.4h-13c-4 -0.4 -8 -0.6 -11.4 0.2c-2.6 0.6 -4 1.8 -4.4 3.4l-0.3 3.4c0 1.1 1.7 1.2 1.9 0.1l0.5 -2.6c0.4 -0.8 1.6 -1.2 3 -1.2l2.2 0.1c-0.6 1.2 -0.6 2.4 -0.4 3.8c0.2 1.1 1.9 1 1.9 -0.1c0 -1.2 0.4 -2 1.4 -2.6c2.2 1.5 5.4 2 8.6 1.9h10',
        INK,
      ),
    ],
    'hold',
  );

/** Standing on the flat of an open hand, fingers straight. */
export const palmPicture = (label: string): Html =>
  svgFrame(
    34,
    20,
    label,
    [
      cup(10, 13.6),
      svgPath(
        'M33.2 18.6h-9c-3 0 -6 -0.4 -8.4 -1.8h-13.4c-1.5 0 -1.5 -2.6 0 -2.6h14.4c1.6 -0.2 2.6 -1 3.6 -2.2c0.9 -1.1 2.6 -0.2 2 1.1c-0.4 0.9 -0.8 1.4 -1.4 2c2.4 0.4 5 0.4 7.4 0.4h4.8',
        INK,
      ),
    ],
    'hold',
  );
