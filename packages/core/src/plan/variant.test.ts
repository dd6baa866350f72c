import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { migrate } from './migrate.ts';
import { editDistance, nearest } from './nearest.ts';
import type { PlanDocument } from './plan.ts';
import { readPlan } from './read.ts';
import { withVariant } from './variant.ts';

const contract = readFileSync(new URL('contract.plan.json', import.meta.url), 'utf8');
const documentOf = (text: string): PlanDocument => {
  const read = readPlan(text, 'plan.json');
  if (!read.ok) throw new Error(read.findings.map((one) => one.message).join('\n'));
  return read.value;
};

describe('a variant', () => {
  const document = documentOf(contract);

  test("lays its stations' keys over, reads them as the plan's own, and leaves the rest", () => {
    const laid = withVariant(document, 'north');
    if (!laid.ok) throw new Error('refused');
    const [s1, s2, s3] = laid.value.plan.stations;
    expect(s1).toEqual({ ...document.plan.stations[0], at: [-150.06, -48.03], practice: { signAhead: 100.584 } });
    expect(s2).toMatchObject({ id: 's2', at: [-150.07, -48.03] });
    expect(s3).toEqual(document.plan.stations[2]);
    expect({ ...laid.value.plan, stations: [] }).toEqual({ ...document.plan, stations: [] });
  });

  test('replaces on by at and at by on', () => {
    const north = withVariant(document, 'north');
    const far = withVariant(document, 'far');
    expect(north.ok && north.value.plan.stations[1]).not.toHaveProperty('on');
    expect(far.ok && far.value.plan.stations[0]).not.toHaveProperty('at');
    expect(far.ok && far.value.plan.stations[0]?.on).toEqual({
      course: 'full',
      measure: 6000,
      side: 'left',
      offset: 4,
    });
  });

  test('keeps the text and the places of its file', () => {
    const laid = withVariant(document, 'north');
    expect(laid.ok && laid.value.text).toBe(contract);
    expect(laid.ok && laid.value.placeOf('/stations/0')).toEqual(document.placeOf('/stations/0'));
  });

  test('that is not known is a finding with the known names', () => {
    const laid = withVariant(document, 'nort');
    expect(laid.findings).toEqual([
      expect.objectContaining({
        code: 'plan-variant',
        message: 'There is no variant “nort”. Did you mean “north”?',
        where: expect.objectContaining({ file: 'plan.json', line: 96, column: 15 }) as unknown,
      }),
    ]);
  });

  test('far from any known name is answered with all of them', () => {
    expect(withVariant(document, 'zzz').findings[0]?.message).toBe(
      'There is no variant “zzz”. Variants of this plan: “north” and “far”.',
    );
  });

  test('of a plan without variants says that there are none', () => {
    const bare = documentOf(JSON.stringify({ ...(JSON.parse(contract) as object), variants: [] }));
    expect(withVariant(bare, 'north').findings[0]?.message).toContain('This plan has no variants.');
  });
});

describe('versions', () => {
  const plan = { format: 'halfcup-plan', version: 1, name: 'x' };
  const migrations = [
    { from: 1, up: ({ name, ...rest }: { readonly [key: string]: unknown }) => ({ ...rest, title: name }) },
    { from: 2, up: (value: { readonly [key: string]: unknown }) => ({ ...value, added: true }) },
  ];

  test('migrations run one after the other, from the version of the file', () => {
    expect(migrate(plan, migrations, 3)).toEqual({
      ok: true,
      value: { format: 'halfcup-plan', version: 3, title: 'x', added: true },
    });
    expect(migrate({ ...plan, version: 2 }, migrations, 3)).toEqual({
      ok: true,
      value: { ...plan, version: 3, added: true },
    });
    expect(migrate({ ...plan, version: 3 }, migrations, 3)).toEqual({ ok: true, value: { ...plan, version: 3 } });
  });

  test.each([0, -1, 1.5, '1', null])('%j is no version', (version) => {
    expect(migrate({ ...plan, version })).toMatchObject({ ok: false, fault: { path: ['version'] } });
  });

  test('a gap in the migrations is an error of the program', () => {
    expect(() => migrate(plan, migrations.slice(1), 3)).toThrow('no migration from version 1');
  });
});

describe('the nearest known word', () => {
  test('edit distances are those of the textbook', () => {
    // "kitten" to "sitting" is 3: the usual textbook example (memory).
    expect([editDistance('kitten', 'sitting'), editDistance('', 'abc'), editDistance('same', 'same')]).toEqual([
      3, 3, 0,
    ]);
  });

  test('is the one that begins alike where two are as near, and none where all are far', () => {
    expect(nearest('sid', ['id', 'side'])).toBe('side');
    expect(nearest('SignAhead', ['signAhead', 'trashTo'])).toBe('signAhead');
    expect(nearest('qqqq', ['id', 'side'])).toBeUndefined();
  });
});
