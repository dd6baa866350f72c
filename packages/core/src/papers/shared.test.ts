/** The whole plan as one file: complete, quiet about people, without script or link. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reviewPlan } from '../whole.ts';
import { papersOf } from './papers.ts';
import { numberOf } from '../layout/layout.ts';

const DEMO = new URL('../../../../fixtures/demo/', import.meta.url);
const file = (name: string): string => readFileSync(new URL(name, DEMO), 'utf8');
const reviewed = reviewPlan({
  plan: file('plan.json'),
  files: { 'full.gpx': file('full.gpx'), 'half.gpx': file('half.gpx') },
});
if (!reviewed.ok) throw new Error(reviewed.findings[0]!.message);
const { analysis } = reviewed.value;
const sharedOf = (language: string): string =>
  papersOf(analysis, { paper: 'a4', printedAt: '2027-09-01 18:30', language }).find(
    ({ name }) => name === 'shared.html',
  )!.html;

describe.each(['en', 'es'])('the whole plan in one file, in %s', (language) => {
  const page = sharedOf(language);

  it('is under a megabyte, and has no script, link or address of anything', () => {
    expect(page.length).toBeLessThan(1_000_000);
    // The name of the font's licence stands in a comment of the style.
    const own = page.replace(/\/\*.*?\*\//gsu, '');
    expect(own.match(/<script|<a |href=|src="|https?:\/\/(?!www\.w3\.org)|url\((?!data:|#)/giu)).toBeNull();
  });

  it('has every station in the order of its number, each with a drawing and its times', () => {
    const stations = [...page.matchAll(/<section class="block station" data-station="([^"]*)">/gu)].map(([, id]) => id);
    expect(stations).toEqual(analysis.stations.toSorted((a, b) => numberOf(a) - numberOf(b)).map(({ id }) => id));
    expect(page.match(/class="layout"/gu)!.length).toBeGreaterThanOrEqual(stations.length);
    expect(page.match(/<table class="facts">/gu)).toHaveLength(stations.length);
  });

  it('has every finding, and no captain, telephone or radio', () => {
    expect(page.split('<table class="found').length).toBe(2);
    // A call sign may be a word of the station's name.
    for (const { people } of analysis.plan.stations)
      for (const one of [people.captain, people.phone])
        if (one !== undefined) expect(page.includes(one), one).toBe(false);
  });
});

it('keeps markup in names inert', () => {
  const text = file('plan.json').replace(
    '"name": "Stennick Chapel"',
    '"name": "<script>x</script><img src=y onerror=z>"',
  );
  const hostile = reviewPlan({ plan: text, files: { 'full.gpx': file('full.gpx'), 'half.gpx': file('half.gpx') } });
  if (!hostile.ok) throw new Error(hostile.findings[0]!.message);
  const page = papersOf(hostile.value.analysis, { paper: 'a4', printedAt: '2027-09-01 18:30' }).find(
    ({ name }) => name === 'shared.html',
  )!.html;
  expect(page.match(/<script>x|<img /gu)).toBeNull();
  expect(page.includes('&lt;script&gt;x')).toBe(true);
});
