import { describe, expect, it } from 'vitest';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import { planStation } from '../testing/plans.ts';
import {
  type DayNeeds,
  type Stretch,
  aroundTables,
  handOutStretch,
  servedOn,
  tableCounts,
  tableStretches,
} from './stretches.ts';

const stretches = (counts: { gel?: number; sportsDrink?: number; water?: number }): Stretch[] =>
  tableStretches({ gel: 0, sportsDrink: 0, water: 0, ...counts }, DEFAULT_PRACTICE);
const close = (kind: string, from: number, to: number): object => ({
  kind,
  from: expect.closeTo(from, 9),
  to: expect.closeTo(to, 9),
});

// All distances: common practice, no source. In exact yards (0.9144 m) and feet (0.3048 m).
describe('the tables along the course', () => {
  it('are sports drink from the pin, then water behind a gap', () => {
    expect(stretches({ sportsDrink: 1, water: 1 })).toEqual([
      close('sportsDrink', 0, 1.8288),
      close('water', 4.8768, 6.7056),
    ]);
  });

  it('take 6 ft each', () => {
    expect(stretches({ sportsDrink: 3, water: 4 })).toEqual([
      close('sportsDrink', 0, 5.4864),
      close('water', 8.5344, 15.8496),
    ]);
  });

  it('begin with water at the pin where there is no sports drink', () => {
    expect(stretches({ water: 2 })).toEqual([close('water', 0, 3.6576)]);
  });

  it('put gel 25 ft before the pin, growing upstream', () => {
    expect(stretches({ gel: 1, water: 1 })[0]).toEqual(close('gel', -9.4488, -7.62));
    expect(stretches({ gel: 2, water: 1 })[0]).toEqual(close('gel', -11.2776, -7.62));
  });

  it('are the plan’s number of each kind served, else one, and none of a kind that is not', () => {
    expect(tableCounts(planStation({ serves: ['gel', 'water'], tables: { water: 4, sportsDrink: 3 } }))).toEqual({
      gel: 1,
      sportsDrink: 0,
      water: 4,
    });
  });
});

const asked = (tables: DayNeeds['tables']): DayNeeds => ({ tables, crew: { handOut: 0 } });

describe('the number of tables', () => {
  it('is the plan’s, else what race day asks, else one', () => {
    const station = planStation({ serves: ['gel', 'sportsDrink', 'water'], tables: { sportsDrink: 2 } });
    expect(tableCounts(station, asked({ gel: 3, sportsDrink: 5, water: 4 }))).toEqual({
      gel: 3,
      sportsDrink: 2,
      water: 4,
    });
    expect(tableCounts(station, asked({ gel: 1, sportsDrink: 1, water: 0 }))).toEqual({
      gel: 1,
      sportsDrink: 2,
      water: 0,
    });
    expect(tableCounts(station)).toEqual({ gel: 1, sportsDrink: 2, water: 1 });
  });

  it('is 0 where the plan says so, and the kind is then not handed out', () => {
    const station = planStation({ serves: ['sportsDrink', 'water'], tables: { sportsDrink: 0, water: 2 } });
    expect(tableCounts(station, asked({ gel: 1, sportsDrink: 3, water: 3 }))).toEqual({
      gel: 0,
      sportsDrink: 0,
      water: 2,
    });
    expect(servedOn(station)).toEqual(['water']);
    expect(servedOn(planStation({ serves: ['gel', 'water'], tables: {} }))).toEqual(['gel', 'water']);
  });
});

describe('the line where cups change hands', () => {
  const tables = stretches({ gel: 1, sportsDrink: 2, water: 3 });

  it('reaches as far as the tables where few hand out', () => {
    expect(handOutStretch(tables, 2, 1.5)).toEqual(close('handOut', -9.4488, 12.192));
  });

  it('is centred on the drink tables where more persons need more', () => {
    // Drink tables from 0 to 12.192 m: centre at 6.096 m.
    expect(handOutStretch(tables, 30, 1.5)).toEqual(close('handOut', 6.096 - 22.5, 6.096 + 22.5));
    expect(handOutStretch(tables, 10, 2)).toEqual(close('handOut', -9.4488, 6.096 + 10));
    expect(handOutStretch(stretches({ water: 2 }), 4, 2)).toEqual(close('handOut', 1.8288 - 4, 1.8288 + 4));
  });

  it('is not there where nobody hands out, or nothing is drunk', () => {
    expect(handOutStretch(tables, 0, 1.5)).toBeNull();
    expect(handOutStretch(stretches({ gel: 2 }), 5, 1.5)).toBeNull();
    expect(handOutStretch([], 5, 1.5)).toBeNull();
  });
});

describe('sign and trash', () => {
  it('are measured from the first and the last table, whatever those are', () => {
    const tables = stretches({ gel: 1, sportsDrink: 1, water: 1 });
    expect(aroundTables(tables, DEFAULT_PRACTICE)).toEqual({
      sign: close('sign', -9.4488 - 91.44, -9.4488 - 91.44),
      trash: close('trash', 6.7056 + 45.72, 6.7056 + 91.44),
    });
    expect(aroundTables(tables.toReversed(), DEFAULT_PRACTICE)).toEqual(aroundTables(tables, DEFAULT_PRACTICE));
  });

  it('are not there where there are no tables', () => {
    expect(aroundTables([], DEFAULT_PRACTICE)).toBeNull();
  });
});
