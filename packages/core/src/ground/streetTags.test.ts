import { describe, expect, it } from 'vitest';
import {
  carriesVehicles,
  isPartOfStreet,
  isStreet,
  layerOf,
  leadsToPremises,
  rankOf,
  streetName,
} from './streetTags.ts';

describe('tags of a way', () => {
  it('make a street of whatever one can run on, and of nothing that is not there', () => {
    for (const highway of ['motorway', 'residential', 'footway', 'path', 'track', 'steps', 'pedestrian', 'raceway'])
      expect(isStreet({ highway })).toBe(true);
    for (const highway of ['construction', 'proposed', 'razed', 'elevator', 'corridor', 'platform'])
      expect(isStreet({ highway })).toBe(false);
    expect(isStreet({ railway: 'rail' })).toBe(false);
    expect(isStreet({ highway: 'residential', access: 'no' })).toBe(true);
  });

  it('tell whether vehicles come along: not on foot, nor where they are banned, buses apart', () => {
    expect(['residential', 'service', 'track', 'living_street'].map((highway) => carriesVehicles({ highway }))).toEqual(
      [true, true, true, true],
    );
    expect(['footway', 'steps', 'cycleway', 'pedestrian'].some((highway) => carriesVehicles({ highway }))).toBe(false);
    expect(carriesVehicles({ highway: 'service', motor_vehicle: 'no' })).toBe(false);
    expect(carriesVehicles({ highway: 'service', motor_vehicle: 'no', bus: 'yes' })).toBe(true);
  });

  it('tell the layer, given or by bridge and tunnel', () => {
    const layers = [{}, { layer: '2' }, { layer: 'top' }, { bridge: 'yes' }, { bridge: 'no' }, { tunnel: 'yes' }];
    expect(layers.map(layerOf)).toEqual([0, 2, 0, 1, 0, -1]);
    expect(layerOf({ bridge: 'yes', layer: '0' })).toBe(0);
    expect(layerOf({ tunnel: 'building_passage' })).toBe(0);
  });

  it('tell driveways and private service roads from streets, and pavements from paths', () => {
    expect(leadsToPremises({ highway: 'service', service: 'driveway' })).toBe(true);
    expect(leadsToPremises({ highway: 'service', access: 'private' })).toBe(true);
    expect(leadsToPremises({ highway: 'service' })).toBe(false);
    expect(leadsToPremises({ highway: 'residential', access: 'private' })).toBe(false);
    expect(isPartOfStreet({ highway: 'footway', footway: 'sidewalk' })).toBe(true);
    expect(isPartOfStreet({ highway: 'footway', footway: 'sidewalk', name: 'Arcade' })).toBe(false);
    expect(isPartOfStreet({ highway: 'footway' })).toBe(false);
  });

  it('tell the name, else the number, and the place among streets', () => {
    expect([{ name: 'A', ref: 'B1' }, { ref: 'B1' }, {}].map(streetName)).toEqual(['A', 'B1', null]);
    expect(rankOf({ highway: 'primary_link' })).toBe(rankOf({ highway: 'primary' }));
    expect(rankOf({ highway: 'primary' })).toBeLessThan(rankOf({ highway: 'residential' }));
    expect(rankOf({ highway: 'residential' })).toBeLessThan(rankOf({ highway: 'path' }));
  });
});
