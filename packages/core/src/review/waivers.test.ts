import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { planOf } from '../testing/plans.ts';
import { waive } from './waivers.ts';

const finding = (code: string, station?: string): Finding => ({ code, severity: 'error', message: 'm', where: station === undefined ? {} : { station } });
const plan = (...waivers: ReturnType<typeof planOf>['waivers']): ReturnType<typeof planOf> => ({ ...planOf({}), waivers });

describe('waivers', () => {
  it('mark the findings of their code and station, with who and why, and leave all others', () => {
    const findings = [finding('sign-distance', 's1'), finding('sign-distance', 's2'), finding('leg-long', 's1')];
    const waived = waive(findings, plan({ code: 'sign-distance', station: 's1', by: 'R. Gull', reason: 'driveway', date: '2027-08-01' }));
    expect(waived[0]!.waived).toEqual({ by: 'R. Gull', reason: 'driveway', date: '2027-08-01' });
    expect(waived.slice(1)).toEqual(findings.slice(1));
  });

  it('without a station hold for findings that are about no station, and for no other', () => {
    const waived = waive([finding('track-spike', 's1'), finding('track-spike')], plan({ code: 'track-spike', by: 'R. Gull', reason: 'a bridge' }));
    expect(waived.map((one) => one.waived?.reason)).toEqual([undefined, 'a bridge']);
  });

  it('that match nothing are findings themselves, with their place in the plan', () => {
    expect(waive([finding('leg-long', 's1')], plan({ code: 'leg-long', station: 's2', by: 'R. Gull', reason: 'x' }))).toEqual([
      finding('leg-long', 's1'),
      expect.objectContaining({ code: 'waiver-unmatched', severity: 'warning', where: { path: '/waivers/0', station: 's2' } }),
    ]);
  });
});
