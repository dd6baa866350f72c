/** How things of a station are held against a map, on a plan in a town (`testing/planted/groundTown.ts`). */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { type Town, type TownPlan, at, groundTown, spot, townPlan, townReview } from '../testing/planted/groundTown.ts';
import { placed } from '../testing/towns.ts';
import { reviewBuilt } from '../asBuilt.ts';
import { readGpx } from '../gpx/read.ts';
import { valueOf } from '../testing/courses.ts';

function findings(code: string, plant: (plan: TownPlan, town: Town) => void): readonly Finding[] {
  const [plan, town] = [townPlan(), groundTown()];
  plant(plan, town);
  return townReview(plan, town).analysis.findings.filter((one) => one.code === code);
}

describe('the mouth of a street', () => {
  const bentOff = (side: 'n' | 's') => (plan: TownPlan, town: Town) => {
    at(997)(plan);
    town.ways['mill'] = [`mill.${side} r1000`, { highway: 'residential', name: 'Mill Lane' }];
  };

  it('is on the side on which the street leaves the course', () => {
    // The course runs east: the tables on its right stand south of it.
    expect(findings('item-in-mouth', bentOff('s'))).toHaveLength(1);
    expect(findings('item-in-mouth', bentOff('n'))).toEqual([]);
  });

  it('of a footpath or a driveway does not count', () => {
    for (const tags of [{ highway: 'footway' }, { highway: 'service', service: 'driveway' }])
      expect(
        findings('item-in-mouth', (plan, town) => {
          at(997)(plan);
          town.ways['mill'] = ['mill.n r1000 mill.s', tags];
        }),
      ).toEqual([]);
  });

  it('is told once for all that stands in it, with the street, the day of the map and where', () => {
    const [found] = findings('item-in-mouth', at(997));
    expect(found!.params).toMatchObject({ items: ['sportsDrink', 'water'], name: 'Mill Lane', map: '2026-10-02' });
    expect(found!.where).toMatchObject({ station: 's1', course: 'c', item: 'sportsDrink' });
    expect(found!.message).toBe(
      'The sports drink tables and the water tables stand in the mouth of Mill Lane, by the map of 2026-10-02. It should stay free: ambulances and residents come out of it, and the closing crew stands there. Move the station along the course, or place them elsewhere by hand.',
    );
  });

  it('is waived like all else, for that street alone', () => {
    const [found] = findings('item-in-mouth', at(997));
    const waivers = [
      {
        code: 'item-in-mouth',
        station: 's1',
        by: 'R. Gull',
        reason: 'closed for the day',
        date: '2027-08-01',
        seen: { item: 'sportsDrink', items: 'sportsDrink, water', name: 'Mill Lane', measured: found!.measured },
      },
    ];
    const [waived] = findings('item-in-mouth', (plan) => void Object.assign(at(997)(plan) ?? plan, { waivers }));
    expect(waived!.waived).toEqual({ by: 'R. Gull', reason: 'closed for the day', date: '2027-08-01' });
    const [other] = findings('item-in-mouth', (plan, town) => {
      Object.assign(at(997)(plan) ?? plan, { waivers });
      town.ways['mill'] = ['mill.n r1000 mill.s', { highway: 'residential', name: 'Ropery Lane' }];
    });
    expect(other!.waived).toBeUndefined();
  });
});

describe('what must stay free', () => {
  it('a hydrant on the other side of the road, or of another road, does not count', () => {
    const away = (left: number) => (plan: TownPlan, town: Town) => {
      at(3798)(plan);
      town.places['hydrant'] = spot(3800, left);
    };
    expect(findings('hydrant-blocked', away(-19))).toHaveLength(1);
    expect(findings('hydrant-blocked', away(6))).toEqual([]);
    expect(findings('hydrant-blocked', away(-21))).toEqual([]);
  });

  it('a fire station counts on either side, and not behind other streets', () => {
    for (const side of ['left', 'right'] as const)
      expect(findings('fire-station-blocked', at(4200, { side }))).toHaveLength(1);
    const [found] = findings('fire-station-blocked', at(4225));
    expect(found!.measured).toBeGreaterThan(19);
    expect(found!.limit).toBeCloseTo(22.86, 2);
    expect(
      findings('fire-station-blocked', (plan, town) => {
        at(4200)(plan);
        for (const k of [0, 1, 2, 3]) {
          const [east, north] = town.places[`engines.${k}`]!;
          town.places[`engines.${k}`] = [east, north + 30];
        }
      }),
    ).toEqual([]);
  });
});

describe('as built', () => {
  it('what was recorded in the mouth of a street is found where it stands', () => {
    const { analysis } = townReview(townPlan(), groundTown());
    const [lon, lat] = placed(spot(997, -4));
    const gpx = `<gpx version="1.1" creator="me"><wpt lat="${lat}" lon="${lon}"><name>s1</name></wpt></gpx>`;
    const built = reviewBuilt(analysis, valueOf(readGpx(gpx, 'placed.gpx')));
    expect(built.findings.some(({ code, built: of }) => code === 'item-in-mouth' && of === true)).toBe(true);
  });
});

describe('sight', () => {
  const round = at(8050, { side: 'left' });

  it('by the houses stands in for the course’s swing where the map has houses, else the swing is told', () => {
    expect(findings('tables-hidden', round)).toEqual([]);
    const bare = (plan: TownPlan, town: Town): void => {
      round(plan);
      town.areas = {};
    };
    expect(findings('tables-unseen', bare)).toEqual([]);
    expect(findings('tables-hidden', bare)).toHaveLength(1);
  });

  it('is open round a corner with a low wall', () => {
    expect(
      findings('tables-unseen', (plan, town) => {
        round(plan);
        town.areas['corner'] = [town.areas['corner']![0], { building: 'yes', height: '1' }];
      }),
    ).toEqual([]);
  });
});
