/**
 * The named cases, each a folder: its analysis is what `expected.json` and `expected.geojson` say (`UPDATE=1` writes
 * them anew). What each is there for is held by hand in `fixtureCases.test.ts`.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import { type Position, geodesicLength } from './support/courses.ts';
import {
  CASES,
  FIXTURES,
  analysed,
  inFixture,
  jsonText,
  pointsOf,
  rounded,
  sourceOf,
  updating,
} from './support/fixtures.ts';

/** The demo has a test of its own. */
const names = CASES.filter((name) => name !== 'demo');
const update = updating(process.env);

const sumOf = (points: readonly Position[]): number =>
  points.slice(1).reduce((sum, to, k) => sum + geodesicLength(points[k]!, to), 0);

describe.each(names)('the case %s', (name) => {
  const { layout, geojson } = analysed(sourceOf(name));

  it('is what is expected', () => {
    const texts = {
      'expected.json': `${jsonText(rounded(layout))}\n`,
      'expected.geojson': `${jsonText(rounded(geojson))}\n`,
    };
    for (const [file, text] of Object.entries(texts)) {
      if (update) writeFileSync(join(FIXTURES, name, file), text);
      expect(JSON.parse(text)).toEqual(JSON.parse(inFixture(name, file)));
    }
  });

  it('has the geodesic length of its points, to 0.1 mm', () => {
    for (const { id, raw } of layout.courses)
      expect(Math.abs(raw - sumOf(pointsOf(name, `${id}.gpx`)))).toBeLessThan(1e-4);
  });

  it('has legs that add up to each race’s course', () => {
    for (const { course, legs } of layout.spacing) {
      expect(legs.reduce((sum, leg) => sum + leg.length, 0)).toBeCloseTo(
        layout.courses.find(({ id }) => id === course)!.length,
        4,
      );
    }
  });
});

describe('the cases', () => {
  it('are drawn by a script that gives the same bytes', () => {
    const folder = mkdtempSync(join(tmpdir(), 'halfcup-fixtures-'));
    try {
      execFileSync(process.execPath, [join(ROOT, 'scripts/makeFixtures.mjs'), folder]);
      expect(readdirSync(folder).sort()).toEqual(names);
      for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
        /\.\w+$/u.test(path),
      )) {
        expect(readFileSync(join(folder, path), 'utf8')).toBe(inFixture('.', path));
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('are written anew where one asks for it, never by CI', () => {
    expect([{}, { CI: 'true' }, { UPDATE: '0' }].map(updating)).toEqual([false, false, false]);
    expect(updating({ UPDATE: '1' })).toBe(true);
    expect(() => updating({ UPDATE: '1', CI: 'true' })).toThrow('CI must not');
  });
});
