/** The shapes of a station's further points: a box with what stands there. */
import type { Palette } from './palette.ts';
import { type Drawing, type Pen, boxed, path } from './pen.ts';

const point = (paint: (pen: Pen, palette: Palette) => void): Drawing => ({
  width: 18,
  height: 18,
  draw: (pen, palette) => {
    pen.lineWidth = 1.4;
    boxed(pen, palette, 1.5, 1.5, 15, 15);
    paint(pen, palette);
  },
});

export const POINTS: Readonly<Record<string, Drawing>> = {
  'point-medical': point((pen) => {
    path(pen, [
      [9, 4.5],
      [9, 13.5],
    ]);
    path(pen, [
      [4.5, 9],
      [13.5, 9],
    ]);
  }),
  'point-toilets': point((pen) => {
    path(pen, [
      [9, 2],
      [9, 16],
    ]);
    path(pen, [
      [6.5, 8],
      [6.5, 10],
    ]);
    path(pen, [
      [11.5, 8],
      [11.5, 10],
    ]);
  }),
  'point-access': point((pen) => {
    pen.strokeRect(4, 6, 7, 4.5);
    path(pen, [
      [11, 7.5],
      [14, 7.5],
      [14, 10.5],
      [11, 10.5],
    ]);
    path(pen, [
      [6, 12.5],
      [7.5, 12.5],
    ]);
    path(pen, [
      [11, 12.5],
      [12.5, 12.5],
    ]);
  }),
  'point-drop': point((pen) => {
    path(pen, [
      [9, 4],
      [9, 12],
    ]);
    path(pen, [
      [5.8, 9],
      [9, 12.2],
      [12.2, 9],
    ]);
    path(pen, [
      [5, 14],
      [13, 14],
    ]);
  }),
  'point-radio': point((pen) => {
    path(pen, [
      [9, 14],
      [9, 7],
    ]);
    path(pen, [
      [5, 4.5],
      [9, 7],
      [13, 4.5],
    ]);
  }),
  'point-other': point((pen) => {
    pen.beginPath();
    pen.arc(9, 9, 3, 0, 2 * Math.PI);
    pen.stroke();
  }),
};
