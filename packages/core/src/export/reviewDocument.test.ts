import { expect, it } from 'vitest';
import type { Finding, Severity } from '../finding.ts';
import type { CheckRun } from '../review/review.ts';
import { planOf } from '../testing/plans.ts';
import { MADE_BY } from '../version.ts';
import { countsOf, reviewDocument } from './reviewDocument.ts';

const finding = (severity: Severity, keys: Partial<Finding> = {}): Finding => ({
  code: 'sign-distance',
  severity,
  message: 'm',
  where: {},
  ...keys,
});
const check = (ran: boolean): CheckRun => ({
  code: 'sign-distance',
  severity: 'error',
  title: 't',
  theme: 'items',
  source: 's',
  ran,
  found: 0,
  cannotTell: 0,
  ...(ran ? {} : { reason: 'no width is given' }),
});
const waived = { by: 'R. Gull', reason: 'driveway' };

it('counts a waived finding as waived alone, and what was not decided or did not run apart', () => {
  const findings = [
    finding('error'),
    finding('error', { waived }),
    finding('warning'),
    finding('note'),
    finding('note', { cannotTell: true }),
    finding('note', { cannotTell: true, waived }),
  ];
  expect(countsOf(findings, [check(true), check(false)])).toEqual({
    error: 1,
    warning: 1,
    note: 2,
    waived: 2,
    cannotTell: 1,
    notRun: 1,
  });
});

it('holds the digests that it was given, the reason of a check that could not run, and verdicts only where there are any', () => {
  const files = { sha256: 'ab', inputs: [{ file: 'c.gpx', sha256: 'cd' }] };
  const analysis = {
    plan: { ...planOf({}), name: 'Ganneth' },
    checks: [check(false)],
    findings: [finding('error', { waived, measured: 1 / 3 })],
  };
  expect(reviewDocument(analysis, files)).toEqual({
    madeBy: MADE_BY,
    plan: { name: 'Ganneth', sha256: 'ab' },
    inputs: files.inputs,
    checks: [check(false)],
    findings: [{ ...finding('error'), waived, measured: 0.333333 }],
    counts: { error: 0, warning: 0, note: 0, waived: 1, cannotTell: 0, notRun: 1 },
  });
  expect(reviewDocument(analysis, { ...files, placed: [] }).placed).toEqual([]);
});
