import { describe, expect, it } from 'vitest';
import { drawnArea, drawnLine, drawnName, isBelow } from './drawn.ts';

describe('what a map draws of the ground', () => {
  it.each([
    [{ highway: 'primary_link' }, 'main'],
    [{ highway: 'residential' }, 'street'],
    [{ highway: 'service', service: 'alley' }, 'lane'],
    [{ highway: 'cycleway' }, 'path'],
    [{ highway: 'steps' }, 'steps'],
    [{ railway: 'tram' }, 'rail'],
    [{ railway: 'tram', highway: 'tertiary' }, 'main'],
    [{ railway: 'rail', tunnel: 'yes' }, null],
    [{ railway: 'abandoned' }, null],
    [{ highway: 'primary', tunnel: 'yes' }, 'main'],
    [{ highway: 'construction' }, null],
    [{ waterway: 'stream' }, 'stream'],
    [{ waterway: 'stream', tunnel: 'culvert' }, null],
    [{ natural: 'coastline' }, 'shore'],
    [{ barrier: 'fence' }, null],
  ])('draws the line %j as %s', (tags, drawn) => {
    expect(drawnLine(tags as Record<string, string>)).toBe(drawn);
  });

  it.each([
    [{ building: 'yes', leisure: 'park' }, 'building'],
    [{ building: 'no', natural: 'water' }, 'water'],
    [{ leisure: 'garden' }, 'park'],
    [{ landuse: 'grass' }, 'park'],
    [{ landuse: 'residential' }, null],
    [{ highway: 'pedestrian', area: 'yes' }, 'paved'],
    [{ man_made: 'pier' }, 'paved'],
  ])('draws the area %j as %s', (tags, drawn) => {
    expect(drawnArea(tags as Record<string, string>)).toBe(drawn);
  });

  it('writes a name, else a number of the road, and none on a house', () => {
    expect(drawnName({ highway: 'primary', name: ' Harbour Road ', ref: 'A 1' })).toBe('Harbour Road');
    expect(drawnName({ highway: 'primary', ref: 'A 1' })).toBe('A 1');
    expect(drawnName({ highway: 'primary', name: ' ' })).toBeNull();
    expect(drawnName({ building: 'yes', name: 'Weigh House' })).toBeNull();
  });

  it('knows a street below ground from a passage through a house', () => {
    expect([isBelow({ tunnel: 'yes' }), isBelow({ tunnel: 'building_passage' }), isBelow({ tunnel: 'no' })]).toEqual([
      true,
      false,
      false,
    ]);
  });
});
