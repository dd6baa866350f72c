import { describe, expect, it } from 'vitest';
import { DEFAULT_CREW, DEFAULT_SUPPLIES, DEFAULT_VEHICLE, DRINK_RATE } from '../plan/defaults.ts';
import { crewOverrides, suppliesOverrides } from '../plan/schemaRules.ts';
import { DEFAULTS_TABLE } from './defaultsTable.ts';

const keysOf = (schema: unknown): string[] => Object.keys((schema as { readonly shape: object }).shape);
const rowsOf = (key: string): typeof DEFAULTS_TABLE =>
  DEFAULTS_TABLE.filter((row) => row.key === key || row.key.startsWith(`${key}.`));

/** Every number of the defaults, with its key; lists under one key. */
const leaves = (value: unknown, key: string): [string, unknown][] =>
  Array.isArray(value)
    ? value.map((one: unknown) => [key, one])
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([name, one]) => leaves(one, `${key}.${name}`))
      : [[key, value]];

describe('The table of defaults', () => {
  it.each([
    ...keysOf(suppliesOverrides).map((key) => `supplies.${key}`),
    ...keysOf(crewOverrides).map((key) => `crew.${key}`),
  ])('has %s', (key) => {
    expect(rowsOf(key).length).toBeGreaterThan(0);
  });

  it('has the value of every default', () => {
    const all = [
      ...leaves(DEFAULT_SUPPLIES, 'supplies'),
      ...leaves(DEFAULT_CREW, 'crew'),
      ...leaves(DEFAULT_VEHICLE, 'vehicles'),
      ...Object.values(DRINK_RATE).map((rate) => ['supplies.drinkRate', rate] as const),
    ];
    expect(all.length).toBeGreaterThan(45);
    for (const [key, value] of all)
      expect(
        DEFAULTS_TABLE.some((row) => row.key === key && row.value === value),
        `${key} ${String(value)}`,
      ).toBe(true);
  });

  it('says of every row what it is, and of what kind its source is', () => {
    for (const { what, source } of DEFAULTS_TABLE) {
      expect(what).toMatch(/^[A-Z]/u);
      expect(source).not.toBe('');
    }
    expect(new Set(DEFAULTS_TABLE.map(({ key, what }) => `${key} ${what}`)).size).toBe(DEFAULTS_TABLE.length);
  });

  it('knows no key that a plan does not', () => {
    const known = new Set([
      ...keysOf(suppliesOverrides).map((key) => `supplies.${key}`),
      ...keysOf(crewOverrides).map((key) => `crew.${key}`),
      ...Object.keys(DEFAULT_VEHICLE).map((key) => `vehicles.${key}`),
      'vehicles.stop',
      'races.slow',
      '–',
    ]);
    for (const { key } of DEFAULTS_TABLE) expect(known).toContain(key.split('.').slice(0, 2).join('.'));
  });
});
