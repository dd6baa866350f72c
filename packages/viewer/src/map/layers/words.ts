/**
 * Upright words near a station, placed here and not by the map: at each band of zooms every word stands where it lies on no
 * other, on no shape and not on the station's ring, for as far in as the band goes. A word without room is counted on the
 * nearest one that has it ("Water +2"), so that none goes missing unseen.
 */
import type { LonLat, StationLayout } from '@halfcup/core';
import { WORDS_ZOOM } from '../style/zooms.ts';
import { stationProps } from './stations.ts';

/** Something with a word. */
export interface WordSpot {
  readonly at: LonLat;
  readonly word: string;
  /** Away from the course, degrees clockwise from north. */
  readonly bearing: number;
}

/** A word with its place. */
export interface PlacedWord {
  readonly at: LonLat;
  readonly says: string;
  /** From which zoom on, an index into `BANDS`. */
  readonly band: number;
  /** From the spot to the middle of the word, in ems: east, south. */
  readonly offset: readonly [number, number];
}

/** Where bands of zooms begin; the last goes on to the end. Within a band things only move apart. */
export const BANDS: readonly number[] = [WORDS_ZOOM, 17, 18, 19];
/** Pixels of a word's size, and of its line. */
export const WORD_SIZE = 12;
const LINE = 15;
/** Pixels that a letter takes: more than nearly all do. */
const LETTER = 7.2;
/** Half of a shape, of a ring, pixels. */
const SHAPE = 8;
const RING = 15;

interface Box {
  /** Its middle. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const meet = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) * 2 < a.width + b.width && Math.abs(a.y - b.y) * 2 < a.height + b.height;

/** Pixels east and south of the pin, at a zoom; Mercator is to scale over so short a way. */
function pixelsFrom([lon, lat]: LonLat, zoom: number): (at: LonLat) => readonly [number, number] {
  const perDegree = (512 * 2 ** zoom) / 360;
  const stretch = 1 / Math.cos((lat * Math.PI) / 180);
  return (at) => [(at[0] - lon) * perDegree, (lat - at[1]) * perDegree * stretch];
}

/** What words must keep off: the station's ring, its stem and its name. */
function obstacles(station: StationLayout): Box[] {
  const { farRingAt, farLabel, anchor, name } = stationProps(station);
  const [x, y] = farRingAt;
  const stem = [0.2, 0.4, 0.6, 0.8].map((share) => ({ x: x * share, y: y * share, width: 8, height: 24 }));
  const lines = Math.max(1, Math.ceil((name.length * LETTER) / (9 * WORD_SIZE)));
  const [width, height] = [Math.min(name.length * LETTER, 9 * WORD_SIZE), lines * LINE];
  const east = anchor.includes('left') ? 0.5 : anchor.includes('right') ? -0.5 : 0;
  const south = anchor.includes('top') ? 0.5 : anchor.includes('bottom') ? -0.5 : 0;
  return [
    { x, y, width: 2 * RING, height: 2 * RING },
    ...stem,
    { x: farLabel[0] * WORD_SIZE + east * width, y: farLabel[1] * WORD_SIZE + south * height, width, height },
  ];
}

/** Turns away from the course's own side, nearest first. */
const TURNS = [0, 45, -45, 90, -90, 135, -135, 180];
const RINGS = [4, 20, 36];

/** Where a word may stand about its spot, best first: a box that touches a circle in that direction. */
function* placesOf(x: number, y: number, bearing: number, width: number): Generator<Box> {
  for (const far of RINGS) {
    for (const turn of TURNS) {
      const angle = ((bearing + turn) * Math.PI) / 180;
      const [east, south] = [Math.sin(angle), -Math.cos(angle)];
      yield {
        x: x + east * (SHAPE + far + width / 2),
        y: y + south * (SHAPE + far + LINE / 2),
        width,
        height: LINE,
      };
    }
  }
}

interface Settled {
  readonly spot: WordSpot;
  readonly box: Box;
  readonly from: readonly [number, number];
}

/** `spare`: pixels that each word keeps for a count behind it. */
function settle(
  spots: readonly WordSpot[],
  on: (at: LonLat) => readonly [number, number],
  fixed: readonly Box[],
  spare: number,
): { readonly settled: readonly Settled[]; readonly left: readonly WordSpot[] } {
  const taken = [
    ...fixed,
    ...spots.map(({ at }) => ({ x: on(at)[0], y: on(at)[1], width: 2 * SHAPE - 2, height: 2 * SHAPE - 2 })),
  ];
  const settled: Settled[] = [];
  const left: WordSpot[] = [];
  for (const spot of spots) {
    const from = on(spot.at);
    const width = spot.word.length * LETTER + spare;
    const box = [...placesOf(...from, spot.bearing, width)].find((one) => !taken.some((other) => meet(one, other)));
    if (box === undefined) {
      left.push(spot);
    } else {
      taken.push(box);
      settled.push({ spot, box, from });
    }
  }
  return { settled, left };
}

const COUNT = 3.5 * LETTER;

/** The words of a station at every band of zooms. */
export function placeWords(station: StationLayout, spots: readonly WordSpot[]): PlacedWord[] {
  const fixed = obstacles(station);
  return BANDS.flatMap((zoom, band) => {
    const on = pixelsFrom(station.at, zoom);
    const easy = settle(spots, on, fixed, 0);
    const { settled, left } = easy.left.length === 0 ? easy : settle(spots, on, fixed, COUNT);
    const more = new Map<WordSpot, number>();
    for (const { at } of left) {
      const [x, y] = on(at);
      const away = ({ from }: Settled): number => Math.hypot(from[0] - x, from[1] - y);
      const [nearest] = settled.toSorted((a, b) => away(a) - away(b));
      if (nearest !== undefined) more.set(nearest.spot, (more.get(nearest.spot) ?? 0) + 1);
    }
    return settled.map(({ spot, box, from }): PlacedWord => {
      const count = more.get(spot);
      return {
        at: spot.at,
        says: count === undefined ? spot.word : `${spot.word} +${count}`,
        band,
        offset: [(box.x - from[0]) / WORD_SIZE, (box.y - from[1]) / WORD_SIZE],
      };
    });
  });
}
