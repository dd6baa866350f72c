import { describe, expect, it } from 'vitest';
import { readPlan } from '../plan/read.ts';
import { valueOf } from '../testing/courses.ts';
import { movedText } from './change.ts';
import type { Move } from './verify.ts';

const TEXT = `\uFEFF{ "format": "halfcup-plan", "version": 1,\r
  "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.3, -33.2]] }],\r
  "races": [ { "id": "m", "course": "c" } ],
  "stations": [
    { "id": "a", "at": [-17.39, -33.2001],  "why":"ramp" },
    { "id": "b", "on": { "course": "c", "measure": "2.62 km", "side": "left" }, "items": { "sign": { "at": [-17.38, -33.2] } }, "note": "x" },
    { "id": "d", "on": { "course": "c", "measure": "3.1mi", "side": "left" } },
    { "id": "e", "on": { "course": "c", "measure": 6000, "side": "left" } } ] }\r
`;

const move = (station: string, dropped: Move['dropped'] = []): Move => ({
  station,
  name: station,
  from: [0, 0],
  to: [0, 0],
  measure: 0,
  course: 'c',
  shift: 1,
  moved: 1,
  dropped,
  walked: false,
});

describe('movedText', () => {
  const document = valueOf(readPlan(TEXT, 'p.json'));
  const { stations } = document.plan;
  const moved = stations.map((station) =>
    station.on === undefined
      ? { ...station, at: [-17.38912345, -33.20012345] as const }
      : { ...station, on: { ...station.on, measure: station.on.measure + 299 } },
  );

  it('changes the bytes of the places and of items given up, each in the form that it has', () => {
    const text = movedText(document, moved, [move('a'), move('b', ['sign']), move('d'), move('e')]);
    // 3.1 mi and 299 m: 3.1 × 1609.344 m = 4988.9664 m, exact.
    const expected = TEXT.replace('[-17.39, -33.2001]', '[-17.38912345, -33.20012345]')
      .replace('"2.62 km"', '"2.919 km"')
      .replace(', "items": { "sign": { "at": [-17.38, -33.2] } }', '')
      .replace('"3.1mi"', '"3.28579mi"')
      .replace('6000', '6299');
    expect(text.replace(/"3\.\d+mi"/u, '"3.28579mi"')).toBe(expected);
    const read = valueOf(readPlan(text, 'p.json')).plan.stations;
    expect(read[2]!.on!.measure).toBeCloseTo(4988.9664 + 299, 2);
    expect(Math.abs(read[2]!.on!.measure - (4988.9664 + 299))).toBeLessThan(1e-3);
    expect(read.map(({ items }) => items)).toEqual([{}, {}, {}, {}]);
  });

  it('keeps every byte where nothing moves, and the items of a station that keeps them', () => {
    expect(movedText(document, stations, [])).toBe(TEXT);
    expect(movedText(document, moved, [move('b')])).toBe(TEXT.replace('"2.62 km"', '"2.919 km"'));
  });
});
