/** The papers' font: the committed files are what the script makes, and the licence goes where the font goes. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { BOLD, REGULAR } from '../packages/core/src/papers/font/bytes.ts';
import { FONT_FACE } from '../packages/core/src/papers/font/font.ts';
import { SIGNS } from '../packages/core/src/papers/font/widths.ts';
import { SHEET_TEXTS } from '../packages/core/src/text/languages.ts';
import { ROOT } from './support/build.ts';
import { FACES, importsOf } from './support/house.ts';

const FILES = [
  'packages/core/src/papers/font/bytes.ts',
  'packages/core/src/papers/font/widths.ts',
  'packages/core/FONT-LICENSE.txt',
];

it('is what its script makes, byte for byte', () => {
  const folder = mkdtempSync(join(tmpdir(), 'halfcup-font-'));
  try {
    execFileSync(process.execPath, [join(ROOT, 'scripts/makeFont.mjs'), folder], { stdio: 'pipe' });
    for (const path of FILES)
      expect(readFileSync(join(folder, path), 'utf8') === readFileSync(join(ROOT, path), 'utf8'), path).toBe(true);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

it('is under 80 kB as WOFF2, both weights together', () => {
  const bytes = [REGULAR, BOLD].map((base64) => Buffer.from(base64, 'base64'));
  for (const one of bytes) expect(one.subarray(0, 4).toString('latin1')).toBe('wOF2');
  expect(bytes.reduce((sum, { length }) => sum + length, 0)).toBeLessThan(80_000);
});

it('holds every sign of every sentence of the papers', () => {
  const texts: string[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === 'string') texts.push(value);
    // What a function puts between its arguments stands in its source.
    else if (typeof value === 'function') texts.push(Function.prototype.toString.call(value));
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
  };
  walk(SHEET_TEXTS);
  expect(texts.length).toBeGreaterThan(300);
  const held = new Set(SIGNS);
  expect([...new Set(texts.join(''))].filter((sign) => !held.has(sign) && !/\s/u.test(sign))).toEqual([]);
});

it('says in each paper whose it is and under what licence, and goes with the package', () => {
  expect(FONT_FACE).toContain('SIL Open Font License 1.1');
  expect(FONT_FACE).toMatch(/Copyright \d{4} The Arimo Project Authors/u);
  const { files } = JSON.parse(readFileSync(join(ROOT, 'packages/core/package.json'), 'utf8')) as { files: string[] };
  expect(files).toContain('FONT-LICENSE.txt');
  expect(readFileSync(join(ROOT, 'packages/core/FONT-LICENSE.txt'), 'utf8')).toContain('SIL OPEN FONT LICENSE');
});

it('is carried by the face of the papers and by no other', () => {
  const behind = (file: string, seen: Set<string> = new Set()): Set<string> => {
    if (seen.has(file)) return seen;
    seen.add(file);
    for (const name of importsOf(readFileSync(file, 'utf8')))
      if (name.startsWith('.')) behind(join(dirname(file), name), seen);
    return seen;
  };
  const core = join(ROOT, 'packages/core/src');
  const carrying = FACES.filter((face) => behind(join(core, face)).has(join(core, 'papers/font/bytes.ts')));
  expect(carrying).toEqual(['papers.ts']);
});
