/**
 * Sunrise and sunset on the clock of a plan, for whoever drives in the dark. Equations of the low-precision Sun in
 * J. Meeus, Astronomical Algorithms, 2nd edition (1998), chapters 25 and 28 (from memory); the Sun's upper limb on
 * a level horizon, 0.833° under it. Within a minute or two between 65° north and south; hills and weather are left out.
 */
import type { LonLat } from '../finding.ts';
import type { Plan } from '../plan/plan.ts';
import { zoneAhead } from '../export/zoneTime.ts';

const RADIANS = Math.PI / 180;
/** The Julian date of 1970-01-01, 0 h. */
const EPOCH = 2_440_587.5;
const DAY = 86_400;
/** Half the Sun's disc and the usual refraction at the horizon, degrees. */
const UNDER = 0.833;

export interface SolarPlace {
  readonly declinationDeg: number;
  /** Apparent less mean solar time, minutes. */
  readonly equationMin: number;
}

/** The Sun's declination and the equation of time at a Julian date. */
export function solarPlace(julian: number): SolarPlace {
  const t = (julian - 2_451_545) / 36_525;
  const sin = (degrees: number): number => Math.sin(degrees * RADIANS);
  const longitude = 280.46646 + t * (36_000.76983 + t * 0.0003032);
  const anomaly = 357.52911 + t * (35_999.05029 - t * 0.0001537);
  const eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
  const centre =
    sin(anomaly) * (1.914602 - t * (0.004817 + t * 0.000014)) +
    sin(2 * anomaly) * (0.019993 - t * 0.000101) +
    sin(3 * anomaly) * 0.000289;
  const node = 125.04 - 1934.136 * t;
  const apparent = longitude + centre - 0.00569 - 0.00478 * sin(node);
  const obliquity =
    23.439291 - t * (0.0130042 + t * (0.00000016 - t * 0.000000504)) + 0.00256 * Math.cos(node * RADIANS);
  const y = Math.tan((obliquity / 2) * RADIANS) ** 2;
  const equation =
    y * sin(2 * longitude) -
    2 * eccentricity * sin(anomaly) +
    4 * eccentricity * y * sin(anomaly) * Math.cos(2 * longitude * RADIANS) -
    0.5 * y * y * sin(4 * longitude) -
    1.25 * eccentricity ** 2 * sin(2 * anomaly);
  return { declinationDeg: Math.asin(sin(obliquity) * sin(apparent)) / RADIANS, equationMin: (4 * equation) / RADIANS };
}

export interface Daylight {
  /** Seconds after midnight of the plan's day, by its clock. */
  readonly sunrise: number;
  readonly sunset: number;
}

/** Sunrise and sunset at a place on the plan's day; `null` without a date and a time zone, and where the Sun does not rise or set. */
export function daylightOf({ date, timeZone }: Pick<Plan, 'date' | 'timeZone'>, [lon, lat]: LonLat): Daylight | null {
  if (date === undefined || timeZone === undefined) return null;
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const offset = zoneAhead(timeZone, midnight + 43_200_000) / 1000;
  // Noon by the Sun, in seconds after the day's midnight by its own clock; a zone far from its meridian moves it.
  const event = (half: -1 | 1): number | null => {
    let local = 43_200;
    for (let round = 0; round < 3; round++) {
      const julian = EPOCH + (midnight / 1000 - offset + local) / DAY;
      const { declinationDeg, equationMin } = solarPlace(julian);
      const cosine =
        (Math.sin(-UNDER * RADIANS) - Math.sin(lat * RADIANS) * Math.sin(declinationDeg * RADIANS)) /
        (Math.cos(lat * RADIANS) * Math.cos(declinationDeg * RADIANS));
      if (!(Math.abs(cosine) <= 1)) return null;
      const noon = 43_200 - lon * 240 - equationMin * 60 + offset;
      local = noon + half * (Math.acos(cosine) / RADIANS) * 240;
    }
    return local;
  };
  const [sunrise, sunset] = [event(-1), event(1)];
  return sunrise === null || sunset === null ? null : { sunrise, sunset };
}
