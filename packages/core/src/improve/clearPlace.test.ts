import { describe, expect, it } from 'vitest';
import { TOWN_MISTAKES, at, groundTown, townPlan, townReview } from '../testing/planted/groundTown.ts';
import { clearPlace } from './clearPlace.ts';
import { improve } from './improve.ts';

const analysisOf = (plant: (typeof TOWN_MISTAKES)[number]['plant']) => {
  const [plan, town] = [townPlan(), groundTown()];
  plant(plan, town);
  return townReview(plan, town).analysis;
};

describe('the nearest clear place', () => {
  it('is out of the mouth of a street by no more than is needed', () => {
    // The tables stand at 997 to 1003.7 m; the mouth of Mill Lane, 6 m wide as assumed, is 992 to 1008 m.
    const place = clearPlace(analysisOf(at(997)), 's1')!;
    expect(place.shift).toBe(11);
    expect(place.station.on?.measure).toBe(1008);
  });

  it('is none where the station stands clear, is fixed, or finds none within reach', () => {
    expect(clearPlace(analysisOf(at(600)), 's1')).toBeNull();
    expect(clearPlace(analysisOf(at(997)), 's1', { within: 10 })).toBeNull();
    const analysis = analysisOf(at(997));
    const [first, ...rest] = analysis.stations;
    const fixed = { ...first!, station: { ...first!.station, fixed: true } };
    expect(clearPlace({ ...analysis, stations: [fixed, ...rest] }, 's1')).toBeNull();
    expect(() => clearPlace(analysis, 's9')).toThrow(RangeError);
  });

  it.each(
    TOWN_MISTAKES.filter(({ whole, code }) => whole !== true && !['sign-unseen', 'tables-unseen'].includes(code)),
  )('mends: $name', ({ plant, code }) => {
    const analysis = analysisOf(plant);
    const { station } = clearPlace(analysis, 's1')!;
    const after = analysisOf((plan, town) => {
      plant(plan, town);
      plan.stations[0]!.on.measure = station.on!.measure;
    });
    expect(after.findings.filter((one) => one.code === code)).toEqual([]);
    expect(after.findings.filter(({ severity }) => severity === 'error').length).toBeLessThanOrEqual(
      analysis.findings.filter(({ severity }) => severity === 'error').length,
    );
  });
});

describe('improving a plan with a map', () => {
  it('moves a station out of the mouth of a street, and the result knows the map', () => {
    const analysis = analysisOf(at(997));
    const better = improve(analysis, { only: ['s1'], within: 50, step: 10 });
    expect(better.moves.map(({ station }) => station)).toEqual(['s1']);
    expect(better.analysis.ground).toBe(analysis.ground);
    expect(better.analysis.findings.filter(({ code }) => code === 'item-in-mouth')).toEqual([]);
  });
});
