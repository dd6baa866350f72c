/** The map's shapes, drawn here when the map first asks for one. Each drawing is told its pen; sizes are CSS pixels. */
import { RING_FAR, RING_NEAR } from './layers/stations.ts';
import { FLAGS } from './flagImages.ts';
import type { Palette } from './palette.ts';
import { type Drawing, boxed, disc, path } from './pen.ts';
import { PHASE_IMAGES } from './phaseImages.ts';
import { POINTS } from './pointImages.ts';

const RATIO = 2;

/** From the pin up to the ring's edge; dotted where it is long. */
const stem = (picked: boolean, height: number, far: boolean): Drawing => ({
  width: 6,
  height,
  draw: (pen, palette) => {
    pen.strokeStyle = picked ? palette.pick : palette.ink;
    pen.lineWidth = far ? 1.2 : 2;
    if (far) pen.setLineDash([2, 3]);
    pen.beginPath();
    pen.moveTo(3, height);
    pen.lineTo(3, 0);
    pen.stroke();
  },
});

/** Where the number stands; dashed where the side of the road is unclear. */
const ring = (picked: boolean, unclear: boolean): Drawing => ({
  width: 22,
  height: 22,
  draw: (pen, palette) => {
    pen.fillStyle = picked ? palette.pick : palette.sheet;
    pen.strokeStyle = picked && !unclear ? palette.pick : palette.ink;
    pen.lineWidth = 1.6;
    if (unclear) pen.setLineDash([4, 2.5]);
    disc(pen, 11, 11, 9.6);
  },
});

/** Where another place of a station stands: hollow and dashed, so that what lies under it shows. */
const hollow: Drawing = {
  width: 22,
  height: 22,
  draw: (pen, palette) => {
    pen.strokeStyle = palette.soft;
    pen.lineWidth = 1.6;
    pen.setLineDash([3, 3]);
    pen.beginPath();
    pen.arc(11, 11, 9.6, 0, 2 * Math.PI);
    pen.stroke();
  },
};

const hollowStem = (height: number): Drawing => ({
  width: 6,
  height,
  draw: (pen, palette) => {
    pen.strokeStyle = palette.soft;
    pen.lineWidth = 1.4;
    pen.setLineDash([3, 3]);
    path(pen, [
      [3, height],
      [3, 0],
    ]);
  },
});

/** A board on a post, its foot at the bottom. */
const sign: Drawing = {
  width: 20,
  height: 20,
  draw: (pen, palette) => {
    pen.beginPath();
    pen.moveTo(10, 20);
    pen.lineTo(10, 12);
    pen.stroke();
    boxed(pen, palette, 2.5, 3, 15, 9);
    pen.beginPath();
    pen.moveTo(6, 7.5);
    pen.lineTo(14, 7.5);
    pen.stroke();
  },
};

const box: Drawing = { width: 10, height: 10, draw: (pen, palette) => boxed(pen, palette, 1.5, 1.5, 7, 7) };

const dots: Drawing = {
  width: 6,
  height: 6,
  draw: (pen, palette) => {
    pen.fillStyle = palette.sheet;
    pen.fillRect(0, 0, 6, 6);
    pen.fillStyle = palette.ink;
    pen.beginPath();
    pen.arc(3, 3, 1.5, 0, 2 * Math.PI);
    pen.fill();
  },
};

const hatch: Drawing = {
  width: 6,
  height: 6,
  draw: (pen, palette) => {
    pen.fillStyle = palette.sheet;
    pen.fillRect(0, 0, 6, 6);
    pen.lineWidth = 1.8;
    pen.beginPath();
    for (const shift of [-6, 0, 6]) {
      pen.moveTo(shift, 6);
      pen.lineTo(shift + 6, 0);
    }
    pen.stroke();
  },
};

/** A head in the running direction, wider than the line that it lies on. */
const arrow: Drawing = {
  width: 14,
  height: 14,
  draw: (pen, palette) => {
    pen.fillStyle = palette.ink;
    pen.strokeStyle = palette.sheet;
    pen.lineWidth = 1.4;
    pen.lineJoin = 'round';
    pen.beginPath();
    pen.moveTo(2.5, 1.8);
    pen.lineTo(12.2, 7);
    pen.lineTo(2.5, 12.2);
    pen.lineTo(4.6, 7);
    pen.closePath();
    pen.fill();
    pen.stroke();
  },
};

const markTick: Drawing = {
  width: 16,
  height: 4,
  draw: (pen) => {
    pen.lineWidth = 1.6;
    pen.beginPath();
    pen.moveTo(1, 2);
    pen.lineTo(15, 2);
    pen.stroke();
  },
};

/** An open disc for the start, a filled square for the finish, the square in the disc where they share a place. */
const end = (kind: 'start' | 'finish' | 'both'): Drawing => ({
  width: 20,
  height: 20,
  draw: (pen, palette) => {
    pen.fillStyle = palette.sheet;
    pen.lineWidth = 2.4;
    if (kind === 'finish') pen.fillRect(3, 3, 14, 14);
    else disc(pen, 10, 10, 7.5);
    pen.fillStyle = palette.ink;
    if (kind === 'finish') pen.fillRect(4.5, 4.5, 11, 11);
    if (kind === 'both') pen.fillRect(7, 7, 6, 6);
  },
});

const DRAWINGS: Readonly<Record<string, Drawing>> = {
  stem: stem(false, RING_NEAR - 9, false),
  'stem-picked': stem(true, RING_NEAR - 9, false),
  'stem-far': stem(false, RING_FAR - 9, true),
  'stem-far-picked': stem(true, RING_FAR - 9, true),
  ring: ring(false, false),
  'ring-picked': ring(true, false),
  'ring-unclear': ring(false, true),
  'ring-unclear-picked': ring(true, true),
  'ring-hollow': hollow,
  'stem-hollow': hollowStem(RING_NEAR - 9),
  'stem-far-hollow': hollowStem(RING_FAR - 9),
  sign,
  box,
  dots,
  hatch,
  arrow,
  mark: markTick,
  'end-start': end('start'),
  'end-finish': end('finish'),
  'end-both': end('both'),
  ...POINTS,
  ...FLAGS,
  ...Object.fromEntries(PHASE_IMAGES),
};

export interface MapImage {
  readonly data: ImageData;
  readonly pixelRatio: number;
}

/** `null` for a name that is not among the shapes. */
export function drawImage(name: string, palette: Palette): MapImage | null {
  const drawing = Object.hasOwn(DRAWINGS, name) ? DRAWINGS[name] : undefined;
  if (drawing === undefined) return null;
  const canvas = document.createElement('canvas');
  canvas.width = drawing.width * RATIO;
  canvas.height = drawing.height * RATIO;
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  pen.scale(RATIO, RATIO);
  pen.strokeStyle = palette.ink;
  pen.fillStyle = palette.ink;
  pen.lineWidth = 1.5;
  drawing.draw(pen, palette);
  return { data: pen.getImageData(0, 0, canvas.width, canvas.height), pixelRatio: RATIO };
}
