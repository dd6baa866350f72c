import type { Finding } from '@halfcup/core';
import { expect, test } from 'vitest';
import { stripFlags } from './flags.ts';
import { stripScale, type StripPass } from './geometry.ts';

const scale = stripScale([0, 1000], 1000, 0);
const pass = (id: string, measure: number, served = true): StripPass => ({
  id,
  nth: 0,
  number: 1,
  name: id,
  measure,
  side: 'left',
  served,
  items: [],
});
const PASSES = [pass('a', 50, false), pass('a', 300), pass('b', 700)];
const finding = (severity: Finding['severity'], where: Finding['where'], waived = false): Finding => ({
  code: 'x',
  severity,
  message: '',
  where,
  ...(waived ? { waived: { by: 'Ada Kelp', reason: 'seen' } } : {}),
});
const flags = (...findings: Finding[]): { x: number; severity: string; waived: boolean; findings: number }[] =>
  stripFlags(findings, 'c', PASSES, scale, 16).map((flag) => ({ ...flag, findings: flag.findings.length }));

test('a finding is marked at its own course distance, else at its station’s served pass, else not at all', () => {
  expect(
    flags(
      finding('error', { course: 'c', measure: 100 }),
      finding('warning', { station: 'a' }),
      finding('note', { course: 'd', measure: 500 }),
      finding('note', { station: 'a', course: 'd' }),
      finding('note', { station: 'z' }),
      finding('note', {}),
      finding('note', { course: 'c', measure: 1500 }),
    ),
  ).toEqual([
    { x: 100, severity: 'error', waived: false, findings: 1 },
    { x: 300, severity: 'warning', waived: false, findings: 1 },
  ]);
});

test('marks that would cover each other are one, with the gravest shape, and its finding first', () => {
  const note = finding('note', { station: 'b' });
  const error = finding('error', { course: 'c', measure: 710 });
  const [one, ...rest] = stripFlags([note, error], 'c', PASSES, scale, 16);
  expect(rest).toEqual([]);
  expect(one).toMatchObject({ x: 700, severity: 'error', findings: [error, note] });
  expect(flags(note, finding('error', { course: 'c', measure: 716 }))).toHaveLength(2);
});

test('a waived error keeps its mark, beside an open one where there is room; other waived findings have none', () => {
  const at = (measure: number): Finding['where'] => ({ course: 'c', measure });
  expect(flags(finding('error', at(10), true), finding('warning', at(500), true))).toEqual([
    { x: 10, severity: 'waived', waived: false, findings: 1 },
  ]);
  const both = [finding('error', at(10), true), finding('note', at(10))];
  expect(flags(...both)).toEqual([{ x: 10, severity: 'note', waived: true, findings: 2 }]);
  expect(flags(...both, finding('note', at(30)))[0]).toMatchObject({ waived: false });
  expect(flags(finding('error', at(10), true), finding('note', at(10)), finding('note', at(42)))[0]).toMatchObject({
    waived: true,
  });
});
