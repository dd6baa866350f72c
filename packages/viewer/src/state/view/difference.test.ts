import { expect, test } from 'vitest';
import { openedFrom, straightPlan } from '../../testing.ts';
import { differenceOf, differenceText } from './difference.ts';
import { openFiles } from '../open/open.ts';

const stationAt = (on: object, more: object = {}) =>
  openedFrom(
    openFiles(
      [
        straightPlan({
          stations: [{ id: 's', name: 'S', serves: ['water'], on: { course: 'c', offset: '5 m', ...on }, ...more }],
        }),
      ],
      null,
    ),
  ).analysis.stations[0]!;

const first = stationAt({ measure: '5 km', side: 'left' });

test('the difference is told along the course, with the side where that is another', () => {
  const later = differenceOf(first, stationAt({ measure: '5035 m', side: 'right' }));
  expect(later.along).toBeCloseTo(35, 3);
  // 35 m along and 10 m across.
  expect(later.moved).toBeCloseTo(Math.hypot(35, 10), 1);
  expect(differenceText(later, 'metric')).toBe('+35 m along the course, to the right-hand side');
  expect(differenceText(differenceOf(first, stationAt({ measure: '4990 m', side: 'left' })), 'metric')).toBe(
    '−10 m along the course',
  );
  // The international yard: 0.9144 m exactly; 35 m are 38.28 yd.
  expect(differenceText(later, 'imperial')).toBe('+38 yd along the course, to the right-hand side');
});

test('the sign is told where its distance is another', () => {
  const text = differenceText({ along: 35, moved: 35, side: null, sign: [74.2, 91.4] }, 'metric');
  expect(text).toBe('+35 m along the course, sign 74 m → 91 m');
});

// 0.01 degrees of latitude on the equator of WGS 84 are 1,105.7 m, from 5 m north of it 1,100.7 m; 0.05 degrees of longitude end 566 m farther: 1,238 m.
test('off the course the length over the ground is told', () => {
  const away = openedFrom(openFiles([straightPlan({ stations: [{ id: 's', name: 'S', at: [0.05, 0.01] }] })], null))
    .analysis.stations[0]!;
  const difference = differenceOf(first, away);
  expect(difference.along).toBeNull();
  expect(differenceText(difference, 'metric')).toBe('1.24 km from where it was');
});
