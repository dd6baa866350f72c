import { expect, it } from 'vitest';
import { saysNothing } from './placeholder.ts';

it.each([
  '',
  '  ',
  'TBC',
  'tbd',
  't.b.a.',
  '?',
  '???',
  'n/a',
  'N/A',
  '-',
  '–',
  'xxx',
  'X',
  '…',
  '...',
  '000',
  'por confirmar',
])('takes %j for nothing', (text) => expect(saysNothing(text)).toBe(true));

it.each(['R. Gull', 'Xavi', 'N. Allen', '112', 'Water 3', '+351 292 000 001'])('takes %j for what it says', (text) =>
  expect(saysNothing(text)).toBe(false),
);

it('takes nothing that is not there', () => expect(saysNothing(undefined)).toBe(true));
