import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MADE_BY, VERSION } from './version.ts';

test('The version that papers and reviews tell is that of the package.', () => {
  const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
    readonly version: string;
  };
  expect(VERSION).toBe(version);
  expect(MADE_BY).toBe(`Halfcup ${version}`);
});
