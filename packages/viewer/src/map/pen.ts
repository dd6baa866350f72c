/** What the map's shapes are drawn with. */
import type { Palette } from './palette.ts';

export type Pen = CanvasRenderingContext2D;

/** One shape; sizes are CSS pixels. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly draw: (pen: Pen, palette: Palette) => void;
}

export const boxed = (pen: Pen, palette: Palette, x: number, y: number, width: number, height: number): void => {
  pen.fillStyle = palette.sheet;
  pen.fillRect(x, y, width, height);
  pen.strokeRect(x, y, width, height);
};

export function disc(pen: Pen, x: number, y: number, radius: number): void {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.fill();
  pen.stroke();
}

/** A line through places. */
export const path = (pen: Pen, places: readonly (readonly [number, number])[]): void => {
  pen.beginPath();
  for (const [index, [x, y]] of places.entries()) {
    if (index === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
  pen.stroke();
};
