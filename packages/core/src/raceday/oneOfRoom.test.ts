import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { oneOfRoom } from './oneOfRoom.ts';
import { racedayFinding } from './racedayFinding.ts';

const short = (station: string, wanted: number): Finding =>
  racedayFinding(
    'pre-pour-room',
    { drink: 'water', tables: 2, hold: 1200, wanted, more: 1 },
    { severity: 'warning', where: { station, item: 'water' }, measured: 1200, limit: wanted, unit: 'cups' },
  );
const other: Finding = { code: 'gels-short', severity: 'warning', message: 'm', where: { station: 's2' } };

it('tables that are short at several stations are one finding, with all in its parameters', () => {
  const [first, second, ...more] = oneOfRoom([short('s1', 1300), other, short('s2', 1500)]);
  expect(more).toEqual([]);
  expect(second).toBe(other);
  expect(first).toMatchObject({
    code: 'pre-pour-room',
    where: { path: '/stations' },
    limit: 1500,
    params: { all: [{ station: 's2' }, { station: 's1' }] },
  });
  expect(first!.where.station).toBeUndefined();
});

it('at one station they stay with it', () => {
  const alone = [other, short('s1', 1300)];
  expect(oneOfRoom(alone)).toBe(alone);
  expect(oneOfRoom([short('s1', 1300), short('s1', 1400)])).toMatchObject([{ where: { station: 's1' } }]);
});
