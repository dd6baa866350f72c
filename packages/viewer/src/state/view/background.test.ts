import { describe, expect, test } from 'vitest';
import { addressed, creditOf, rememberedBackground, takeTiles } from './background.ts';
import { PLAN_BACKGROUND } from '../store/backgrounds.ts';
import { createStore } from '../store/store.ts';

const kept = (text: string | null) => (): Pick<Storage, 'getItem'> => ({ getItem: () => text });

describe('a background by its address', () => {
  test('is pictures where the address has z, x and y, else a style', () => {
    expect(addressed('https://tiles.example.invalid/{z}/{x}/{y}.png', 'Somebody')).toMatchObject({
      ok: true,
      background: { kind: 'raster' },
    });
    expect(addressed(' https://example.invalid/style.json ', 'Somebody')).toMatchObject({
      ok: true,
      background: { kind: 'style', address: 'https://example.invalid/style.json' },
    });
  });

  test('is refused with what is accepted where it is none, is not https, or has no credit', () => {
    for (const typed of [
      '',
      'roads',
      'http://example.invalid/s.json',
      'javascript:alert(1)',
      'file:///etc/passwd',
      'https://example.invalid/{z}/{x}.png',
    ]) {
      expect(addressed(typed, 'x')).toMatchObject({
        ok: false,
        field: 'address',
        message: expect.stringContaining('Use an https URL of a map style') as string,
      });
    }
    expect(addressed('https://example.invalid/s.json', ' ')).toMatchObject({ ok: false, field: 'credit' });
  });

  test('shows whose it is and where it comes from', () => {
    expect(
      creditOf({ kind: 'raster', address: 'https://tiles.example.invalid/{z}/{x}/{y}.png', credit: 'Island survey' }),
    ).toBe('Background: Island survey. Loaded from tiles.example.invalid; its owner’s terms apply.');
    expect(creditOf(PLAN_BACKGROUND)).toBeNull();
  });
});

describe('what is remembered', () => {
  test('comes back as it was', () => {
    expect(rememberedBackground(kept('{"kind":"paper"}'))).toEqual({ kind: 'paper' });
    expect(
      rememberedBackground(kept('{"kind":"style","address":"https://example.invalid/s.json","credit":"S"}')),
    ).toEqual({ kind: 'style', address: 'https://example.invalid/s.json', credit: 'S' });
  });

  test('is left aside where it cannot be used, and where the browser keeps nothing', () => {
    const locked = (): Storage => {
      throw new Error('SecurityError');
    };
    expect(rememberedBackground(locked)).toEqual(PLAN_BACKGROUND);
    for (const text of [
      null,
      '',
      '{',
      '7',
      '{"kind":"style","address":"http://example.invalid","credit":"S"}',
      '{"kind":"style","address":3}',
    ])
      expect(rememberedBackground(kept(text))).toEqual(PLAN_BACKGROUND);
  });
});

test('an archive of tiles among dropped files becomes the background, the others are left', () => {
  const store = createStore();
  const plan = new File(['{}'], 'plan.json');
  expect(takeTiles(store, [new File(['x'], 'Island.PMTILES'), plan])).toEqual([plan]);
  expect(store.background.value).toMatchObject({ kind: 'tiles' });
});
