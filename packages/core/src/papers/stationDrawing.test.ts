import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { valueOf } from '../testing/courses.ts';
import { planFrom } from '../testing/plans.ts';
import { kerbGates } from './stationGround.ts';
import { stationDrawing } from './stationDrawing.ts';

const analysis = valueOf(
  analyse(
    planFrom({
      courses: [
        {
          id: 'c',
          line: [
            [-17.4, -33.2],
            [-17.36, -33.2],
          ],
        },
      ],
      races: [{ id: 'r', course: 'c' }],
      stations: [
        {
          id: 's1',
          on: { course: 'c', measure: '2 km', side: 'right' },
          width: '8 m',
          serves: ['water'],
          tables: { water: 3 },
        },
      ],
      zones: [
        // South of the course, the runners' right; 10 m long, a few metres off the line, beside the tables.
        {
          name: 'Farm <drive>',
          rule: 'keep-clear',
          polygon: [
            [-17.3785, -33.20003],
            [-17.3784, -33.20003],
            [-17.3784, -33.20009],
          ],
        },
        {
          name: 'North',
          rule: 'keep-clear',
          polygon: [
            [-17.3785, -33.19997],
            [-17.3784, -33.19997],
            [-17.3784, -33.19991],
          ],
        },
        {
          name: 'May stand',
          rule: 'allowed',
          polygon: [
            [-17.3785, -33.20003],
            [-17.3784, -33.20003],
            [-17.3784, -33.20009],
          ],
        },
      ],
    }),
    { gpx: new Map() },
  ),
);
const station = analysis.stations[0]!;

describe('the drawing of a station by itself', () => {
  it('carries its font, names the ground to keep clear at the tables’ own kerb, escaped, and says how wide the road is', () => {
    const { svg, width, height } = stationDrawing(analysis, station, { size: 'full' });
    expect(width).toBe(269);
    expect(svg).toMatch(new RegExp(`^<svg [^>]*height="${Math.round(height * 100) / 100}mm"`, 'u'));
    expect(svg).toContain('font/woff2;base64,');
    expect(svg).toContain('Keep clear: Farm &lt;drive&gt;');
    expect(svg).not.toContain('North');
    expect(svg).not.toContain('May stand');
    expect(svg).toMatch(/data-road="1">8 m</u);
    expect(kerbGates(analysis, station, station.directions[0]!)).toHaveLength(1);
  });

  it('speaks the language and the units that are asked for', () => {
    const { svg } = stationDrawing(analysis, station, { language: 'es', units: 'imperial' });
    expect(svg).toContain('Dejar libre: Farm');
    expect(svg).toMatch(/data-road="1">26\.2 ft</u);
  });

  it('says once what distances are measured from and with', () => {
    const { svg } = stationDrawing(analysis, station, { size: 'full' });
    expect(svg.split('Before or past the chalk mark, by wheel along the kerb.')).toHaveLength(2);
    expect(stationDrawing(analysis, station, { note: false }).svg).not.toContain('Before or past');
  });

  it('refuses what it cannot draw', () => {
    expect(() => stationDrawing(analysis, station, { width: 20 })).toThrow(RangeError);
    expect(() => stationDrawing(analysis, station, { direction: 3 })).toThrow(/of which it has 1; found 3/u);
    expect(() => stationDrawing(analysis, station, { size: 'huge' as 'full' })).toThrow(RangeError);
  });
});
