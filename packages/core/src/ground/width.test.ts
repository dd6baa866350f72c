import { describe, expect, it } from 'vitest';
import { streetWidth, widthOf } from './width.ts';

describe('a width', () => {
  // Forms of the OpenStreetMap wiki, "Map features/Units" and "Key:width": metres without a unit, feet and inches by ' and ".
  it.each([
    ['7', 7],
    ['7 m', 7],
    ['7.5m', 7.5],
    ['7,5', 7.5],
    [' 6.25 ', 6.25],
    ["24'", 7.3152],
    ['24 ft', 7.3152],
    ['24\'6"', 7.4676],
  ])('is read from %j', (text, width) => expect(widthOf(text)).toBeCloseTo(width, 9));

  it.each([undefined, '', 'narrow', '0', '-3', '7-9', '7;8', '2000', '1e2', '7 km'])('is none in %j', (text) =>
    expect(widthOf(text)).toBeNull(),
  );

  it('rests on the tag, else on lanes, else on the class of the street', () => {
    expect(streetWidth({ highway: 'residential', width: '9', lanes: '2' })).toEqual({ width: 9, rests: 'width' });
    expect(streetWidth({ highway: 'residential', width: 'wide', lanes: '2' })).toEqual({ width: 6.5, rests: 'lanes' });
    expect(streetWidth({ highway: 'residential', lanes: '1;2' })).toEqual({ width: 6, rests: 'class' });
    expect(streetWidth({ highway: 'primary_link' })).toEqual({ width: 5, rests: 'class' });
    expect(streetWidth({ highway: 'service', service: 'driveway' })).toEqual({ width: 3, rests: 'class' });
  });
});
