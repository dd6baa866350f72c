/** Where a station could stand: why it stays, and which places are none. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import { layStation } from '../layout/layStation.ts';
import { courseTable } from '../station/seeStation.ts';
import type { PlanStation } from '../plan/plan.ts';
import { AT_1500, OUT_AND_BACK, STRAIGHT, analysisOf } from '../testing/analyses.ts';
import { ORIGIN, from, turtlePoints, valueOf } from '../testing/courses.ts';
import { type Place, placeAt, whyStays } from './places.ts';

const moved = (analysis: Analysis, shift: number): Place | null =>
  placeAt(shift, false, analysis.stations[0]!, analysis.plan, courseTable(analysis.courses));
const PIN: Partial<PlanStation> = { at: from(from(ORIGIN, 90, 1500), 180, 5), side: 'right' };

it('a station stays where it is fixed, off the course, or serves no pass', () => {
  const why = (keys: Partial<PlanStation>): string | null => whyStays(analysisOf(STRAIGHT, [keys]).stations[0]!);
  expect([
    why(AT_1500),
    why({ ...AT_1500, fixed: true }),
    why({ at: [-10, -30] }),
    why({ ...PIN, passes: [{ race: 'm', pass: 4 }] }),
  ]).toEqual([null, 'fixed', 'off the course', 'serves no pass']);
});

describe('a station that is moved', () => {
  it('keeps its offset and side, and is laid out where it comes to stand', () => {
    for (const keys of [AT_1500, PIN]) {
      const analysis = analysisOf(STRAIGHT, [keys]);
      const { shift, laid, dropped } = moved(analysis, 250)!;
      expect([shift, dropped]).toEqual([250, []]);
      expect(laid.passes[0]).toMatchObject({
        measure: expect.closeTo(1750, 2),
        offset: expect.closeTo(-5, 2),
        served: true,
      });
      expect(
        valueOf(layStation({ ...analysis.plan, stations: [laid.station] }, 0, courseTable(analysis.courses))).at,
      ).toEqual(laid.at);
    }
  });

  it('has no place before the start or past the finish', () => {
    for (const keys of [AT_1500, PIN])
      for (const shift of [-1600, 2600]) expect(moved(analysisOf(STRAIGHT, [keys]), shift)).toBeNull();
  });

  it('has no place where another pass would lead, or the runners come by more often', () => {
    // Its pin on the way out, 200 m before the turn: past the turn it is on the way back.
    const analysis = analysisOf(OUT_AND_BACK, [{ at: from(from(ORIGIN, 90, 2800), 180, 5), side: 'right' }]);
    expect(moved(analysis, -100)).not.toBeNull();
    expect(moved(analysis, 400)).toBeNull();
  });

  it('has no place beyond a stretch that it alone is too near to: on the inside of a hairpin the nearer leg is passed too', () => {
    const hairpin = turtlePoints(
      ORIGIN,
      [
        [90, 2000],
        [180, 30],
        [270, 2000],
      ],
      10,
    );
    const analysis = analysisOf(hairpin, [
      { at: from(from(ORIGIN, 90, 1900), 180, 20), side: 'right', passes: 'all', lead: { race: 'm', pass: 0 } },
    ]);
    const nearer = analysis.stations[0]!.passes.map(({ offset }) => Math.round(Math.abs(offset)));
    expect(nearer).toEqual([20, 10]);
    expect(moved(analysis, 150)).toBeNull();
  });
});
