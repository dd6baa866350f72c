/**
 * Upright words near a station, placed here and not by the map: at each band of zooms every word stands where it lies on no
 * other, on no shape and not on the station's ring, for as far in as the band goes. A word without room is counted on the
 * nearest one that has it ("Water +2"), so that none goes missing unseen.
 */
import type { LonLat, StationLayout } from '@halfcup/core';
import { stationProps } from './stations.ts';

/** Something with a word. */
export interface WordSpot {
  readonly at: LonLat;
  readonly word: string;
  /** Away from the course, degrees clockwise from north. */
  readonly bearing: number;
  /** How far its shape reaches from the spot, pixels. */
  readonly reach?: number;
  /** From the course's line, metres, where that is known. */
  readonly gap?: number;
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

/** Where bands of zooms begin; the last goes on to the end. */
export const BANDS: readonly number[] = [16.1, 16.6, 17.2, 18, 19];
/** The map goes no farther in. */
const LAST_ZOOM = 22;
/** Pixels of a word's size, and of its line. */
export const WORD_SIZE = 12;
const LINE = 15;
/** Pixels that a letter takes: more than nearly all do. */
const LETTER = 7.6;
/** Half of a shape, of a ring, pixels. */
const SHAPE = 8;
const RING = 15;

/** A box that keeps its size and its way from a spot, while the map about the pin grows. */
interface Box {
  /** Of its spot from the pin where the band begins. */
  readonly spot: readonly [number, number];
  /** From the spot to its middle. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** From and to: how many times as large as at the band's beginning two boxes meet along one axis. */
function during(apart: number, beside: number, reach: number, most: number): readonly [number, number] {
  if (apart === 0) return Math.abs(beside) < reach ? [1, most] : [2, 1];
  const ends = [(-reach - beside) / apart, (reach - beside) / apart];
  return [Math.max(1, Math.min(...ends)), Math.min(most, Math.max(...ends))];
}

/** Whether two boxes share ground anywhere in a band in which the map grows `most` times. */
function meet(a: Box, b: Box, most: number): boolean {
  const [x0, x1] = during(a.spot[0] - b.spot[0], a.x - b.x, (a.width + b.width) / 2, most);
  const [y0, y1] = during(a.spot[1] - b.spot[1], a.y - b.y, (a.height + b.height) / 2, most);
  return Math.max(x0, y0) < Math.min(x1, y1);
}

const pixelsPerMetre = (latitude: number, zoom: number): number =>
  (512 * 2 ** zoom) / (40_075_016.7 * Math.cos((latitude * Math.PI) / 180));

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
  const spot = [0, 0] as const;
  const stem = [0.2, 0.4, 0.6, 0.8].map((share) => ({ spot, x: x * share, y: y * share, width: 8, height: 24 }));
  const lines = Math.max(1, Math.ceil((name.length * LETTER) / (9 * WORD_SIZE)));
  const [width, height] = [Math.min(name.length * LETTER, 9 * WORD_SIZE), lines * LINE];
  const east = anchor.includes('left') ? 0.5 : anchor.includes('right') ? -0.5 : 0;
  const south = anchor.includes('top') ? 0.5 : anchor.includes('bottom') ? -0.5 : 0;
  return [
    { spot, x, y, width: 2 * RING, height: 2 * RING },
    ...stem,
    { spot, x: farLabel[0] * WORD_SIZE + east * width, y: farLabel[1] * WORD_SIZE + south * height, width, height },
  ];
}

/** Turns away from the course's own side, nearest first. */
const TURNS = [0, 45, -45, 90, -90, 135, -135, 180];
const RINGS = [4, 20, 36];

/** Where a word may stand about its spot, best first: a box that touches a circle in that direction. */
function* placesOf(spot: readonly [number, number], bearing: number, width: number, reach: number): Generator<Box> {
  for (const far of RINGS) {
    for (const turn of TURNS) {
      const angle = ((bearing + turn) * Math.PI) / 180;
      const [east, south] = [Math.sin(angle), -Math.cos(angle)];
      yield {
        spot,
        x: east * (reach + far + width / 2),
        y: south * (reach + far + LINE / 2),
        width,
        height: LINE,
      };
    }
  }
}

/** Pixels that a word keeps from the middle of the course's line. */
const OFF_LINE = 5;

/** Whether a box ends before the course's line, `gap` pixels from its spot. It is nearest where the band begins. */
function staysOnSide({ x, y, width, height }: Box, bearing: number, gap: number): boolean {
  const angle = (bearing * Math.PI) / 180;
  const [east, south] = [-Math.sin(angle), Math.cos(angle)];
  const reach = x * east + y * south + (Math.abs(east) * width + Math.abs(south) * height) / 2;
  return reach <= gap - OFF_LINE;
}

/** The same places, those first that leave the course's line free. */
function inOrder(spot: WordSpot, from: readonly [number, number], width: number, perMetre: number): readonly Box[] {
  const all = [...placesOf(from, spot.bearing, width, spot.reach ?? SHAPE)];
  const { gap } = spot;
  if (gap === undefined) return all;
  const stays = (box: Box): boolean => staysOnSide(box, spot.bearing, gap * perMetre);
  return [...all.filter(stays), ...all.filter((box) => !stays(box))];
}

interface Settled {
  readonly spot: WordSpot;
  readonly box: Box;
  readonly from: readonly [number, number];
}

interface View {
  readonly on: (at: LonLat) => readonly [number, number];
  readonly perMetre: number;
  /** How many times as large the band's end shows things. */
  readonly most: number;
}

/** `spare`: pixels that each word keeps for a count behind it. */
function settle(
  spots: readonly WordSpot[],
  { on, perMetre, most }: View,
  fixed: readonly Box[],
  spare: number,
): { readonly settled: readonly Settled[]; readonly left: readonly WordSpot[] } {
  const taken = [
    ...fixed,
    ...spots.map(({ at }) => ({ spot: on(at), x: 0, y: 0, width: 2 * SHAPE - 2, height: 2 * SHAPE - 2 })),
  ];
  const settled: Settled[] = [];
  const left: WordSpot[] = [];
  for (const spot of spots) {
    const from = on(spot.at);
    const width = spot.word.length * LETTER + spare;
    const box = inOrder(spot, from, width, perMetre).find((one) => !taken.some((other) => meet(one, other, most)));
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
    const most = 2 ** ((BANDS[band + 1] ?? LAST_ZOOM) - zoom);
    const view = { on, perMetre: pixelsPerMetre(station.at[1], zoom), most };
    const easy = settle(spots, view, fixed, 0);
    const { settled, left } = easy.left.length === 0 ? easy : settle(spots, view, fixed, COUNT);
    const more = new Map<WordSpot, number>();
    for (const { at } of left) {
      const [x, y] = on(at);
      const away = ({ from }: Settled): number => Math.hypot(from[0] - x, from[1] - y);
      const [nearest] = settled.toSorted((a, b) => away(a) - away(b));
      if (nearest !== undefined) more.set(nearest.spot, (more.get(nearest.spot) ?? 0) + 1);
    }
    return settled.map(({ spot, box }): PlacedWord => {
      const count = more.get(spot);
      return {
        at: spot.at,
        says: count === undefined ? spot.word : `${spot.word} +${count}`,
        band,
        offset: [box.x / WORD_SIZE, box.y / WORD_SIZE],
      };
    });
  });
}
