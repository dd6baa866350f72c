import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationListText } from '../../export/stationList.ts';
import { real } from '../../testing/numbers.ts';
import { tries } from '../../testing/tries.ts';
import { readPlan } from '../read.ts';
import type { StationListOptions } from './listed.ts';
import { readStationList } from './read.ts';

const COURSES = [
  { id: 'full', name: 'Full', start: 0, length: 42_195 },
  { id: 'half', name: 'Half', start: 0, length: 21_097.5 },
] as const;
const OPTIONS: StationListOptions = { file: 'list.csv', units: 'metric', courses: COURSES };

const stationsOf = (text: string, options: Partial<StationListOptions> = {}): unknown[] => {
  const list = readStationList(text, { ...OPTIONS, ...options });
  if (!list.ok) throw new Error(list.findings.map(({ message }) => message).join('\n'));
  return list.value.map(({ station }) => station);
};
const said = (text: string, options: Partial<StationListOptions> = {}): string[] =>
  readStationList(text, { ...OPTIONS, ...options }).findings.map(
    ({ where, message }) => `${where.line ?? ''}:${where.column ?? ''} ${message}`,
  );

describe('a list of stations', () => {
  it('is read by its heads, in English and in Spanish, in any order, with commas, semicolons or tabs', () => {
    const wanted = [
      {
        name: 'Mill',
        on: { course: 'full', measure: '5.2 km', side: 'left' },
        serves: ['sportsDrink', 'water'],
        tables: { sportsDrink: 2, water: 3 },
        width: '6 m',
      },
      { name: 'Pier', on: { course: 'half', measure: '12 km', side: 'right' }, serves: ['gel', 'water'] },
    ];
    expect(
      stationsOf(
        'Name,Course,Distance,Side,Serves,Tables,Width\nMill,,5.2,left,"water, sports drink",5,6\nPier,half,12.0 km,R,gel + water,,\n',
      ).map((station) => JSON.parse(JSON.stringify(station).replace('12.0 km', '12 km')) as unknown),
    ).toEqual(wanted);
    expect(
      stationsOf(
        'Lado;Nombre;Distancia (km);Recorrido;Se sirve;Mesas;Ancho\nizquierda;Mill;5,2;;agua y bebida isotónica;5;6\nDcha.;Pier;12;Half;geles, agua;;\n',
      ),
    ).toEqual(wanted);
    expect(stationsOf('NAME\tkm\tside\nMill\t5.2\tl\n')).toEqual([
      { name: 'Mill', on: { course: 'full', measure: '5.2 km', side: 'left' } },
    ]);
  });

  it('takes distances without a unit in that of the head, else in km or miles by the units of the plan', () => {
    const measures = (text: string, units: 'metric' | 'imperial'): unknown[] =>
      (stationsOf(text, { units }) as { on: { measure: string } }[]).map(({ on }) => on.measure);
    expect(measures('distance,side\n3,left\n800 m,left\n2 mi,left\n', 'metric')).toEqual(['3 km', '800 m', '2 mi']);
    expect(measures('distance,side\n3,left\n', 'imperial')).toEqual(['3 mi']);
    expect(measures('Distance (m),side\n800,left\n', 'imperial')).toEqual(['800 m']);
    expect(measures('Mile,side\n3,left\n', 'metric')).toEqual(['3 mi']);
  });

  it('takes positions, whose comma can only be decimal', () => {
    expect(stationsOf('name;lat;lon;side\nMill;-33,201;-17,4;left\n')).toEqual([
      { name: 'Mill', at: [-17.4, -33.201], side: 'left' },
    ]);
  });

  it('reads a number that can be read two ways as the rest of its column, and refuses it where that does not say', () => {
    const measures = (text: string): unknown[] =>
      (stationsOf(text) as { on: { measure: string } }[]).map(({ on }) => on.measure);
    expect(measures('km;side\n5,2;left\n1,250;left\n')).toEqual(['5.2 km', '1.250 km']);
    expect(measures('distance (m);side\n800.5;left\n1,250;left\n')).toEqual(['800.5 m', '1250 m']);
    expect(said('km;side\n5;left\n1,250;left\n')).toEqual([
      '3:1 Row 3, Distance: “1,250” can be read in two ways, with a decimal mark or in thousands. It should be written without a thousands mark, or with one or two decimals. The row was left out.',
    ]);
    expect(said('km;side\n5,2;left\n1.250;left\n')[0]).toContain('“1.250” can be read in two ways');
  });

  it('leaves out the rows that have faults, each reported by row and column, and takes the others', () => {
    const text =
      'name,km,side,boxes\nMill,5.2,left,2\nPier,fast,left,2\nBay,7,up,2\nCape,9,right,2\nEnd,43,right,two\nNowhere,,left,\n';
    expect((stationsOf(text) as { name: string }[]).map(({ name }) => name)).toEqual(['Mill', 'Cape']);
    expect(said(text)).toEqual([
      '3:6 Row 3, Distance: “fast” is not a course distance. It should be a number or a length such as 5.2 km. The row was left out.',
      '4:7 Row 4, Side: “up” is not a side. It should be left or right, as the runners see it. The row was left out.',
      '6:5 Row 6 is at 43.00 km, but the course is 42.20 km long. The row was left out.',
      '6:14 Row 6, Boxes: “two” is not a count. It should be a whole number of 0 or more. The row was left out.',
      '7:1 Row 7 does not say where the station is. It should have a distance, or a longitude and a latitude. The row was left out.',
    ]);
  });

  it('reports a course that is not there, half a position, two places, and more fields than heads', () => {
    expect(said('km,course,lon,lat,side\n1,Hafl,,,left\n,,-17.4,,left\n1,,-17.4,-33.2,left\n5,2,,,,left\n')).toEqual([
      '2:3 Row 2: there is no course “Hafl”. Courses: “Full” and “Half”. The row was left out.',
      '3:3 Row 3 has only one of longitude and latitude. It should have both, or a distance. The row was left out.',
      '4:1 Row 4 has both a distance and a position. It should have one of them. The row was left out.',
      '5:8 Row 5 has 6 fields, and the header 5. A field that holds a delimiter, such as a decimal comma, should be in quotes. The row was left out.',
      '5:3 Row 5: there is no course “2”. Courses: “Full” and “Half”. The row was left out.',
    ]);
  });

  it('says what it assumed, and which columns it did not use', () => {
    expect(said('name,km,tables,Colour\nMill,1,5,red\n')).toEqual([
      '1:16 Columns that Halfcup does not know were not used: “Colour”.',
      ': The list gives no side for 1 station. They were put on the right. Check the sides.',
      ': The list gives 1 station one number of tables for several kinds. The tables were shared evenly, water first. Check the tables.',
    ]);
    expect(stationsOf('name,km,side,water,gel\nMill,1,l,3,x\n')).toEqual([
      {
        name: 'Mill',
        on: { course: 'full', measure: '1 km', side: 'left' },
        serves: ['gel', 'water'],
        tables: { water: 3 },
      },
    ]);
  });

  it('is refused without heads, without a place, with a column twice, with an open quote, and empty', () => {
    const first = (text: string): string => {
      const list = readStationList(text, OPTIONS);
      expect(list.ok).toBe(false);
      return list.findings[0]!.message;
    };
    expect(first('')).toContain('The list is empty.');
    expect(first('name,km\n')).toContain('no stations');
    expect(first('Mill,5,left\n')).toContain('names no columns');
    expect(first('name,side\nMill,left\n')).toContain('where stations are');
    expect(first('km,distance\n1,2\n')).toContain('A second column “distance”');
    expect(first('name,km\n"Mill,5\n')).toContain('never closed');
  });

  it('takes rows copied without their header, where the caller says what its columns hold', () => {
    expect(stationsOf('Mill\t5,2\tleft\n', { columns: ['name', 'distance', 'side'] })).toEqual([
      { name: 'Mill', on: { course: 'full', measure: '5.2 km', side: 'left' } },
    ]);
  });
});

describe('a list that is written', () => {
  const words = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }).filter((text) => text.trim() === text);
  const station = fc.record(
    {
      name: words,
      place: fc.oneof(
        fc.record({ measure: real(0, 42_000), side: fc.constantFrom('left', 'right') }),
        fc.tuple(
          fc.integer({ min: -1_800_000_000, max: 1_800_000_000 }),
          fc.integer({ min: -900_000_000, max: 900_000_000 }),
        ),
      ),
      serves: fc.constantFrom(['gel'], ['sportsDrink', 'water'], ['gel', 'water']),
      water: fc.nat(20),
      width: real(0.1, 40),
      captain: words,
      note: words,
    },
    { requiredKeys: ['name', 'place', 'serves'] },
  );

  it('reads back to the same stations, in either language and either units', () => {
    fc.assert(
      fc.property(
        fc.array(station, { minLength: 1, maxLength: 6 }),
        fc.constantFrom('en' as const, 'es' as const),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (drafts, language, units) => {
          const entries = drafts.map(({ place, water, captain, ...rest }, k) => ({
            id: `s${k + 1}`,
            ...rest,
            ...(Array.isArray(place)
              ? { at: [place[0] / 1e7, place[1] / 1e7], side: 'left' }
              : { on: { course: 'full', ...place } }),
            ...(water === undefined ? {} : { tables: { water } }),
            ...(captain === undefined ? {} : { people: { captain } }),
          }));
          const planOf = (stations: unknown): ReturnType<typeof readPlan> =>
            readPlan(
              JSON.stringify({
                format: 'halfcup-plan',
                version: 1,
                units,
                courses: [
                  {
                    id: 'full',
                    line: [
                      [-17.4, -33.2],
                      [-17.36, -33.2],
                    ],
                  },
                ],
                races: [{ id: 'r', course: 'full' }],
                stations,
              }),
              'plan.json',
            );
          const plan = planOf(entries);
          // Names that a plan itself refuses are not a list's matter.
          fc.pre(plan.ok);
          if (!plan.ok) return;
          const back = planOf(stationsOf(stationListText(plan.value.plan, language), { units }));
          expect(back.ok && back.value.plan.stations).toEqual(plan.value.plan.stations);
        },
      ),
      { seed: 17, numRuns: tries(300) },
    );
  });
});
