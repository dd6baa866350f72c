import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { planOf } from '../testing/plans.ts';
import { isPlacedCode, waive } from './waivers.ts';

const finding = (code: string, station?: string): Finding => ({
  code,
  severity: 'error',
  message: 'm',
  where: station === undefined ? {} : { station },
});
const plan = (...waivers: ReturnType<typeof planOf>['waivers']): ReturnType<typeof planOf> => ({
  ...planOf({}),
  waivers,
});

describe('waivers', () => {
  it('mark the findings of their code and station, with who and why, and leave all others', () => {
    const findings = [finding('sign-distance', 's1'), finding('sign-distance', 's2'), finding('leg-long', 's1')];
    const waived = waive(
      findings,
      plan({ code: 'sign-distance', station: 's1', by: 'R. Gull', reason: 'driveway', date: '2027-08-01' }),
    );
    expect(waived[0]!.waived).toEqual({ by: 'R. Gull', reason: 'driveway', date: '2027-08-01' });
    expect(waived.slice(1)).toEqual(findings.slice(1));
  });

  it('without a station hold for findings that are about no station, and for no other', () => {
    const waived = waive(
      [finding('track-spike', 's1'), finding('track-spike')],
      plan({ code: 'track-spike', by: 'R. Gull', reason: 'a bridge' }),
    );
    expect(waived.map((one) => one.waived?.reason)).toEqual([undefined, 'a bridge']);
  });

  it('that match nothing are findings themselves, with their place in the plan', () => {
    expect(
      waive([finding('leg-long', 's1')], plan({ code: 'leg-long', station: 's2', by: 'R. Gull', reason: 'x' })),
    ).toEqual([
      finding('leg-long', 's1'),
      expect.objectContaining({
        code: 'waiver-unmatched',
        severity: 'warning',
        where: { path: '/waivers/0', station: 's2' },
      }),
    ]);
  });
});

describe('which waivers are missed', () => {
  it('are those of codes that were looked for, each by its place, and not those that any finding matches', () => {
    const two = plan(
      { code: 'leg-long', station: 's1', by: 'R. Gull', reason: 'x' },
      { code: 'leg-short', by: 'R. Gull', reason: 'y' },
      { code: 'placed-side', station: 's1', by: 'R. Gull', reason: 'z' },
    );
    const found = waive([finding('leg-long', 's2'), finding('leg-long', 's1')], two, (code) => !isPlacedCode(code));
    expect(found.map(({ code, waived }) => [code, waived?.reason])).toEqual([
      ['leg-long', undefined],
      ['leg-long', 'x'],
      ['waiver-unmatched', undefined],
    ]);
    expect(found[2]!.where).toEqual({ path: '/waivers/1' });
    expect(found[2]!.message).toBe(
      'The waiver of “leg-short” by R. Gull matches no finding. Remove it, or correct its code or station.',
    );
    expect(waive([], two).map(({ where }) => where.path)).toEqual(['/waivers/0', '/waivers/1', '/waivers/2']);
    expect(waive([], two)[0]).toMatchObject({
      where: { station: 's1' },
      params: { waived: 'leg-long', by: 'R. Gull' },
    });
  });

  it('have no date where none was given', () => {
    expect(
      waive([finding('leg-long', 's1')], plan({ code: 'leg-long', station: 's1', by: 'R. Gull', reason: 'x' }))[0]!
        .waived,
    ).toEqual({ by: 'R. Gull', reason: 'x' });
    expect([isPlacedCode('placed-side'), isPlacedCode('misplaced-side')]).toEqual([true, false]);
  });
});
