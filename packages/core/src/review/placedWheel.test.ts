import { expect, it } from 'vitest';
import { ORIGIN } from '../testing/courses.ts';
import { type Recorded, placedDocument } from '../testing/placed.ts';
import { pointsOf } from './placedPoint.ts';
import { type Wheeled, wheeledOf } from './placedWheel.ts';

const wheeled = (keys: Partial<Recorded>): Wheeled =>
  wheeledOf(pointsOf(placedDocument([{ name: 's1 sign', at: ORIGIN, ...keys }]), 5).points[0]!);

// 1 yd = 0.9144 m, 1 ft = 0.3048 m, exact: NIST Handbook 44, appendix C.
it('reads a wheel in yards, feet and metres, wherever a device keeps the text', () => {
  for (const comment of ['wheel 98 yd', 'Wheel: 98yd', 'wheeled 98 yards', 'by the drive, wheel=98.0 yd; windy'])
    expect(wheeled({ comment })).toEqual({ metres: 89.6112 });
  expect(wheeled({ description: 'WHEEL 294 ft' })).toEqual({ metres: 89.6112 });
  expect(wheeled({ comment: 'wheel 89.6 m' })).toEqual({ metres: 89.6 });
  expect(wheeled({ comment: 'wheel 98 yd', description: 'wheel 98 yd' })).toEqual({ metres: 89.6112 });
  expect(wheeled({ name: 's1 sign wheel 98 yd' })).toEqual({ metres: 89.6112 });
});

it('does not read a wheel without a unit, with a comma that could mean two things, or with two answers', () => {
  for (const comment of [
    'wheel 98',
    'wheel 98,5 yd',
    'wheel 98 paces',
    'wheel',
    'wheel 0 m',
    'wheel 98 yd; wheel 97 yd',
  ]) {
    expect([comment, wheeled({ comment })]).toEqual([comment, { unread: expect.any(String) }]);
  }
  expect(wheeled({ comment: 'wheel 98 yd', description: 'wheel 99 yd' })).toEqual({ unread: '98 yd; 99 yd' });
});

it('no word of a wheel is no reading', () => {
  expect(wheeled({})).toBeNull();
  expect(wheeled({ comment: 'wheelchair ramp 3 m' })).toBeNull();
});
