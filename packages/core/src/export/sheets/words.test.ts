import { expect, it } from 'vitest';
import type { Finding } from '../../finding.ts';
import { limitText, measuredText } from './words.ts';

const finding = (keys: Partial<Finding>): Finding => ({ code: 'x', severity: 'note', message: 'm', where: {}, ...keys });

it('limits have their unit once, and none is cut off where there is none', () => {
  expect(limitText(finding({ limit: [82.296, 100.584], unit: 'm' }), 'metric')).toBe('82.3 to 100.6 m');
  expect(limitText(finding({ limit: [0.97, 1.03] }), 'metric')).toBe('0.97 to 1.03');
  expect(limitText(finding({ limit: [-0.04, 0.04] }), 'metric')).toBe('-0.04 to 0.04');
});

it('grades and probabilities are told per cent', () => {
  expect(limitText(finding({ code: 'grade-at-tables', limit: [-0.04, 0.04] }), 'metric')).toBe('-4 to 4 %');
  expect(measuredText(finding({ code: 'grade-at-tables', measured: -0.1789 }), 'metric')).toBe('-17.9 %');
  expect(measuredText(finding({ code: 'side-unclear', measured: 0.5 }), 'imperial')).toBe('50 %');
});
