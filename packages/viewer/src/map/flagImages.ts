/** The shapes of severities, as beside the findings (`SeverityMark`), on a ground that sets them off from the map. */
import type { Palette } from './palette.ts';
import { path, type Drawing, type Pen } from './pen.ts';

/** Of one mark, pixels; beside a second one they stand this far apart. */
const SIZE = 15;
const STEP = 16;

type Shape = 'error' | 'warning' | 'note' | 'waived';

/** The outline, in a square of 14 as the marks in the page are drawn. */
function outline(pen: Pen, shape: Shape): void {
  pen.beginPath();
  if (shape === 'note') pen.arc(7, 7, 5.6, 0, 2 * Math.PI);
  else if (shape === 'warning') {
    pen.moveTo(7, 1.2);
    pen.lineTo(13.2, 12.6);
    pen.lineTo(0.8, 12.6);
    pen.closePath();
  } else pen.rect(1.5, 1.5, 11, 11);
}

/** Strokes inside it, each from and to. */
const INSIDE: Readonly<Record<Shape, readonly (readonly (readonly [number, number])[])[]>> = {
  error: [
    [
      [4.6, 4.6],
      [9.4, 9.4],
    ],
    [
      [9.4, 4.6],
      [4.6, 9.4],
    ],
  ],
  warning: [
    [
      [7, 5.2],
      [7, 8.8],
    ],
    [
      [7, 10.2],
      [7, 11],
    ],
  ],
  note: [
    [
      [7, 6.2],
      [7, 10],
    ],
    [
      [7, 3.8],
      [7, 4.7],
    ],
  ],
  waived: [
    [
      [4.4, 7],
      [9.6, 7],
    ],
  ],
};

function mark(pen: Pen, palette: Palette, shape: Shape): void {
  pen.lineJoin = 'round';
  pen.lineCap = 'round';
  pen.fillStyle = palette.sheet;
  pen.strokeStyle = palette.sheet;
  pen.lineWidth = 4;
  outline(pen, shape);
  pen.stroke();
  pen.fill();
  pen.strokeStyle = { error: palette.bad, warning: palette.warn, note: palette.soft, waived: palette.soft }[shape];
  pen.lineWidth = 1.6;
  if (shape === 'waived') pen.setLineDash([2.2, 1.47]);
  outline(pen, shape);
  pen.stroke();
  pen.setLineDash([]);
  for (const stroke of INSIDE[shape]) path(pen, stroke);
}

const flag = (shapes: readonly Shape[]): Drawing => ({
  width: SIZE + (shapes.length - 1) * STEP + 2,
  height: SIZE + 2,
  draw: (pen, palette) => {
    for (const [index, shape] of shapes.entries()) {
      pen.save();
      pen.translate(1.5 + index * STEP, 1.5);
      mark(pen, palette, shape);
      pen.restore();
    }
  },
});

export const FLAGS: Readonly<Record<string, Drawing>> = Object.fromEntries([
  ['flag-waived', flag(['waived'])],
  ...(['error', 'warning', 'note'] as const).flatMap((shape) => [
    [`flag-${shape}`, flag([shape])],
    [`flag-${shape}-waived`, flag([shape, 'waived'])],
  ]),
]) as Readonly<Record<string, Drawing>>;
