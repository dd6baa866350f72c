import { describe, expect, it } from 'vitest';
import { type Place, courseAlong, drawnGround } from '../testing/towns.ts';
import type { GroundAlong, StreetPlace } from './along.ts';
import { groundAlong } from './groundAlong.ts';
import type { Tags } from './ground.ts';
import { streetPlace } from './streetPlace.ts';

const named = (name: string): Tags => ({ highway: 'residential', name });
const ground = drawnGround({
  places: {
    w: [0, 0],
    a: [100, 0],
    r: [200, 0],
    q: [230, 0],
    b: [300, 0],
    e: [400, 0],
    f: [400, 150],
    g: [600, 0],
    an: [100, 80],
    bs: [300, -80],
    rn: [215, 15],
  },
  ways: {
    h1: ['w a r', named('Harbour Road')],
    link: ['r q', { highway: 'residential', junction: 'roundabout' }],
    ring: ['r rn q', { highway: 'residential', junction: 'roundabout' }],
    h2: ['q b e', named('Harbour Road')],
    mill: ['a an', named('Mill Lane')],
    path: ['b bs', { highway: 'path' }],
    quay: ['e f', named('Quay Street')],
    on: ['e g', named('Pier Road')],
  },
});
const along = (...places: Place[]): GroundAlong => groundAlong(courseAlong(places), ground);
const place = (street: string | null, after: string | null, before: string | null): StreetPlace => ({
  street,
  after,
  before,
});

describe('the place of a station by streets', () => {
  const turning = along([0, 0], [400, 0], [400, 150]);

  it('is the street between the cross-street passed last and the one that comes next', () => {
    expect(streetPlace(turning, 50)).toEqual(place('Harbour Road', null, 'Mill Lane'));
    expect(streetPlace(turning, 150)).toEqual(place('Harbour Road', 'Mill Lane', 'Quay Street'));
    expect(streetPlace(turning, 450)).toEqual(place('Quay Street', 'Harbour Road', null));
  });

  it('is in running order: the other way round on the way back', () => {
    const back = along([400, 150], [400, 0], [0, 0]);
    expect(streetPlace(back, 400)).toEqual(place('Harbour Road', 'Quay Street', 'Mill Lane'));
    expect(streetPlace(back, 500)).toEqual(place('Harbour Road', 'Mill Lane', null));
  });

  it('goes on through a short link without a name, and passes unnamed paths over', () => {
    expect(streetPlace(turning, 215)).toEqual(place('Harbour Road', 'Mill Lane', 'Quay Street'));
    expect(streetPlace(turning, 350)).toEqual(place('Harbour Road', 'Mill Lane', 'Quay Street'));
  });

  it('at a junction itself has that as passed', () => {
    const at = turning.junctions[0]!.measure;
    expect(streetPlace(turning, at)).toEqual(place('Harbour Road', 'Mill Lane', 'Quay Street'));
  });

  it('ends where the street goes on under another name', () =>
    expect(streetPlace(along([0, 0], [600, 0]), 350)).toMatchObject({ street: 'Harbour Road', before: 'Pier Road' }));

  it('is nowhere off the streets and beyond the ends', () => {
    const off = along([0, 500], [400, 500]);
    for (const measure of [-1, 200, 1e6]) expect(streetPlace(off, measure)).toEqual(place(null, null, null));
    expect(streetPlace(turning, 1e6)).toEqual(place(null, null, null));
  });

  /** A straight course over stretches of a street each, with their lengths. */
  const over = (...stretches: readonly (readonly [name: string | null, length: number])[]): GroundAlong => {
    let at = 0;
    const streets = stretches.map(([name, length], k) => {
      at += length;
      return { from: at - length, to: at, way: `way/${k}`, name, tags: { highway: 'residential' } };
    });
    return { streets, junctions: [], features: [], keepClear: [], widths: [], surfaces: [], offMap: [] };
  };

  it('is none on a street without a name, such as a link between two streets', () => {
    const link = over(['Harbour Road', 200], [null, 50], ['Quay Street', 200]);
    expect(streetPlace(link, 225)).toEqual(place(null, null, null));
    expect(streetPlace(link, 100)).toEqual(place('Harbour Road', null, null));
  });

  it('takes several pieces of a link for the street, up to 60 m of them together', () => {
    for (const [middle, whole] of [
      [20, true],
      [21, false],
    ] as const) {
      const pieces = over(
        ['Harbour Road', 200],
        [null, 20],
        [null, middle],
        [null, 20],
        ['Harbour Road', 200],
        ['Mill Lane', 9],
      );
      for (const measure of [100, 210, 230, 250])
        expect(streetPlace(pieces, measure).before, `${measure} m`).toBe(whole ? 'Mill Lane' : null);
      expect(streetPlace(pieces, 230).street).toBe(whole ? 'Harbour Road' : null);
    }
  });
});
