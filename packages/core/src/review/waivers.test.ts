import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { Plan, PlanWaiver } from '../plan/plan.ts';
import { planOf } from '../testing/plans.ts';
import { seenOf, stillSeen } from './seen.ts';
import { isPlacedCode, waive } from './waivers.ts';

const finding = (code: string, station?: string, keys: Partial<Finding> = {}): Finding => ({
  code,
  severity: 'error',
  message: 'm',
  where: station === undefined ? {} : { station },
  ...keys,
});
const GIVEN = { by: 'R. Gull', reason: 'a driveway', date: '2027-08-01' } as const;
const plan = (...waivers: readonly PlanWaiver[]): Plan => ({ ...planOf({}), waivers });
const boundTo = (one: Finding): PlanWaiver => ({
  code: one.code,
  ...(one.where.station === undefined ? {} : { station: one.where.station }),
  ...GIVEN,
  seen: seenOf(one),
});
const codes = (findings: readonly Finding[]): string[] =>
  findings.map(({ code, waived }) => (waived === undefined ? code : `${code} waived`));

describe('waivers', () => {
  it('mark the findings of their code and station, with who, why and when, and leave all others', () => {
    const findings = [finding('sign-distance', 's1'), finding('sign-distance', 's2'), finding('leg-long', 's1')];
    const waived = waive(findings, plan(boundTo(findings[0]!)));
    expect(waived[0]!.waived).toEqual(GIVEN);
    expect(waived.slice(1)).toEqual(findings.slice(1));
  });

  it('without a station hold for findings that are about no station, and for no other', () => {
    const findings = [finding('track-spike', 's1'), finding('track-spike')];
    expect(codes(waive(findings, plan(boundTo(findings[1]!))))).toEqual(['track-spike', 'track-spike waived']);
  });

  it('that match nothing are findings themselves, with their place in the plan', () => {
    expect(waive([finding('leg-long', 's1')], plan({ code: 'leg-long', station: 's2', ...GIVEN }))).toEqual([
      finding('leg-long', 's1'),
      expect.objectContaining({
        code: 'waiver-unmatched',
        severity: 'warning',
        where: { path: '/waivers/0', station: 's2' },
      }),
    ]);
  });

  it('of an older plan, which do not say what was seen, still hold, and ask to be renewed', () => {
    const found = waive([finding('leg-long', 's1')], plan({ code: 'leg-long', station: 's1', ...GIVEN }));
    expect(codes(found)).toEqual(['leg-long waived', 'waiver-unbound']);
    expect(found[1]!.severity).toBe('note');
    expect(found[1]!.message).toContain('Renew it');
  });

  it('without a date, dated after the race, without a name or without a reason in words do not hold, and say what is wanted', () => {
    const leg = finding('leg-long', 's1');
    const lacks = (keys: Partial<PlanWaiver>): readonly [string, string] => {
      const { date: _, ...undated } = boundTo(leg);
      const given = 'date' in keys && keys.date === undefined ? undated : { ...boundTo(leg), ...keys };
      const [held, said] = waive([leg], { ...plan(given), date: '2027-09-12' });
      expect(held!.waived).toBeUndefined();
      expect(said!.severity).toBe('warning');
      return [said!.code, String(said!.params!['lacks'])];
    };
    expect(lacks({ date: undefined as never })).toEqual(['waiver-refused', 'date']);
    expect(lacks({ date: '2027-09-13' })).toEqual(['waiver-refused', 'earlierDate']);
    expect(lacks({ reason: '- 12 -' })).toEqual(['waiver-refused', 'reason']);
    expect(lacks({ reason: 'x' })).toEqual(['waiver-refused', 'reason']);
    expect(lacks({ by: '?' })).toEqual(['waiver-refused', 'by']);
    // On race day itself it may still be given.
    expect(codes(waive([leg], { ...plan({ ...boundTo(leg), date: '2027-09-12' }), date: '2027-09-12' }))).toEqual([
      'leg-long waived',
    ]);
  });
});

describe('a waiver is bound to what was seen', () => {
  const inZone = (zone: string): Finding =>
    finding('item-in-zone', 's2', { params: { zone, item: 'sign' }, where: { station: 's2', item: 'sign' } });
  const wide = (measured: number): Finding =>
    finding('clear-width', 's2', { measured, limit: 3, unit: 'm', params: { measured, limit: 3 } });

  it('one for a farm drive does not cover a gate that is added later', () => {
    const drive = boundTo(inZone('Farm drive'));
    expect(codes(waive([inZone('Farm drive'), inZone('Gate')], plan(drive)))).toEqual([
      'item-in-zone waived',
      'item-in-zone',
    ]);
    const gate = waive([inZone('Gate')], plan(drive));
    expect(codes(gate)).toEqual(['item-in-zone', 'waiver-outgrown']);
    expect(gate[1]!.message).toContain('given for something else');
  });

  it('one given at 2.7 m holds to a tenth less, and not at 0.2 m', () => {
    const waiver = boundTo(wide(2.7));
    expect(codes(waive([wide(2.9)], plan(waiver)))).toEqual(['clear-width waived']);
    expect(codes(waive([wide(2.44)], plan(waiver)))).toEqual(['clear-width waived']);
    expect(codes(waive([wide(2.42)], plan(waiver)))).toEqual(['clear-width', 'waiver-outgrown']);
    const worse = waive([wide(0.2)], plan(waiver));
    expect(codes(worse)).toEqual(['clear-width', 'waiver-outgrown']);
    expect(worse[1]!.message).toContain('become worse');
  });

  it('one over a limit holds to a tenth more; one outside a range not on its other side', () => {
    const leg = (measured: number): Finding => finding('leg-long', 's2', { measured, limit: 5000 });
    expect(stillSeen(seenOf(leg(5200)), leg(5719))).toBe('same');
    expect(stillSeen(seenOf(leg(5200)), leg(5721))).toBe('worse');
    const sign = (measured: number): Finding => finding('sign-distance', 's2', { measured, limit: [82, 100] });
    expect(stillSeen(seenOf(sign(70)), sign(64))).toBe('same');
    expect(stillSeen(seenOf(sign(70)), sign(62))).toBe('worse');
    expect(stillSeen(seenOf(sign(70)), sign(105))).toBe('worse');
    expect(stillSeen(seenOf(sign(110)), sign(60))).toBe('worse');
  });

  it('what it names is the race, the items, the zone, the point and the other station', () => {
    expect(
      seenOf(
        finding('drop-side', 's1', {
          where: { station: 's1', race: 'm', item: 'water' },
          params: { point: { kind: 'drop', name: 'Truck' }, items: ['gel', 'water'], before: 's2', offset: 3 },
        }),
      ),
    ).toEqual({ race: 'm', item: 'water', before: 's2', items: 'gel, water', point: 'drop Truck' });
  });
});

describe('which waivers are missed', () => {
  it('are those of codes that were looked for, each by its place, and not those that any finding matches', () => {
    const leg = finding('leg-long', 's1');
    const three = plan(boundTo(leg), { code: 'leg-short', ...GIVEN }, { code: 'placed-side', station: 's1', ...GIVEN });
    const found = waive([finding('leg-long', 's2'), leg], three, ({ code }) => !isPlacedCode(code));
    expect(codes(found)).toEqual(['leg-long', 'leg-long waived', 'waiver-unmatched']);
    expect(found[2]!.where).toEqual({ path: '/waivers/1' });
    expect(found[2]!.message).toBe(
      'The waiver of “leg-short” by R. Gull matches no finding. Remove it, or correct its code or station.',
    );
    expect(waive([], three).map(({ where }) => where.path)).toEqual(['/waivers/0', '/waivers/1', '/waivers/2']);
    expect([isPlacedCode('placed-side'), isPlacedCode('misplaced-side')]).toEqual([true, false]);
  });
});
