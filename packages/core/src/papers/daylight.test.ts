/** Sunrise and sunset, against Meeus's worked examples and what holds of the Sun anywhere. */
import { describe, expect, it } from 'vitest';
import { daylightOf, solarPlace } from './daylight.ts';

describe('the Sun', () => {
  it('stands where Meeus, Astronomical Algorithms, examples 25.a and 28.b, put it on 1992 October 13 (from memory)', () => {
    const { declinationDeg, equationMin } = solarPlace(2_448_908.5);
    expect(declinationDeg).toBeCloseTo(-7.78507, 3);
    expect(equationMin).toBeCloseTo(13 + 42.6 / 60, 1);
  });

  it('is up for twelve hours and some minutes on the equator at an equinox, about noon by its meridian', () => {
    const { sunrise, sunset } = daylightOf({ date: '2027-03-20', timeZone: 'Etc/GMT' }, [0, 0])!;
    // 2 × 0.833° of horizon are 6.7 minutes.
    expect((sunset - sunrise) / 60).toBeCloseTo(12 * 60 + 6.7, 0);
    expect(Math.abs((sunrise + sunset) / 2 - 43_200)).toBeLessThan(8 * 60);
  });

  it('rises on the clock of the zone, an hour later where that is an hour ahead', () => {
    const place = [-17.4, -33.2] as const;
    const west = daylightOf({ date: '2027-09-12', timeZone: 'Etc/GMT+1' }, place)!;
    const universal = daylightOf({ date: '2027-09-12', timeZone: 'Etc/GMT' }, place)!;
    expect(universal.sunrise - west.sunrise).toBeCloseTo(3600, -1);
    expect(west.sunrise).toBeGreaterThan(6 * 3600);
    expect(west.sunrise).toBeLessThan(6.5 * 3600);
  });

  it('tells nothing without a date, a zone or a known zone, and where it does not set', () => {
    expect(daylightOf({ timeZone: 'Etc/GMT' }, [0, 0])).toBeNull();
    expect(daylightOf({ date: '2027-03-20' }, [0, 0])).toBeNull();
    expect(daylightOf({ date: '2027-06-21', timeZone: 'Etc/GMT' }, [0, 75])).toBeNull();
  });
});
