/** Plans and their files in one call, against the same done step by step. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from './analyse.ts';
import { readGpx } from './gpx/read.ts';
import { placeFindings } from './plan/placeFindings.ts';
import type { PlanInput } from './plan/input.ts';
import { readPlan } from './plan/read.ts';
import { withVariant } from './plan/variant.ts';
import { MINIMAL_PLAN } from './testing/plans.ts';
import { valueOf } from './testing/courses.ts';
import { layoutPlan, reviewPlan } from './whole.ts';

const DEMO = new URL('../../../fixtures/demo/', import.meta.url);
const plan = readFileSync(new URL('plan.json', DEMO), 'utf8');
const files = Object.fromEntries(['full.gpx', 'half.gpx'].map((name) => [name, readFileSync(new URL(name, DEMO))]));
const gpx = new Map(Object.entries(files).map(([name, bytes]) => [name, valueOf(readGpx(bytes, name))]));
const document = valueOf(readPlan(plan, 'plan.json'));

describe('a review in one call', () => {
  const reviewed = reviewPlan({ plan, files });

  it('comes to what its steps come to, each finding with its place', () => {
    const analysis = valueOf(analyse(document.plan, { gpx }));
    expect(reviewed.ok).toBe(true);
    expect(reviewed.findings).toEqual(placeFindings(analysis.findings, document));
    expect(valueOf(reviewed).analysis.findings).toBe(reviewed.findings);
    expect({ ...valueOf(reviewed).analysis, findings: [], kept: null }).toEqual({
      ...analysis,
      findings: [],
      kept: null,
    });
    // What is said of the whole plan, by what several files give, has no place in one of them.
    for (const { where, code } of reviewed.findings) expect(where.file, code).toBeDefined();
  });

  it('takes files as text, as bytes and as they were read, in a map too, and a plan as text, value or document', () => {
    const { findings } = reviewed;
    const texts = Object.fromEntries(Object.entries(files).map(([name, bytes]) => [name, bytes.toString('utf8')]));
    expect(reviewPlan({ plan, files: texts }).findings).toEqual(findings);
    expect(reviewPlan({ plan: document, files: gpx }).findings).toEqual(findings);
    const bare = reviewPlan({ plan: JSON.parse(plan) as PlanInput, files }).findings;
    expect(bare.map(({ code, message }) => [code, message])).toEqual(
      findings.map(({ code, message }) => [code, message]),
    );
  });

  it('lays a variant over, and names the known ones where there is none of that name', () => {
    const name = document.plan.variants[0]!.name;
    const other = valueOf(reviewPlan({ plan, files, variant: name }));
    expect(other.document.plan).toEqual(valueOf(withVariant(document, name)).plan);
    expect(reviewPlan({ plan, files, variant: 'nowhere' }).findings[0]?.code).toBe('plan-variant');
  });

  it('tells of every file that cannot be used, at its place, and of those that are missing', () => {
    const broken = reviewPlan({ plan, files: { 'full.gpx': '<gpx', 'half.gpx': '' }, file: 'race.json' });
    expect([broken.ok, broken.findings.map(({ where }) => where.file)]).toEqual([false, ['full.gpx', 'half.gpx']]);
    const missing = reviewPlan({ plan, file: 'race.json' });
    expect(missing.ok).toBe(false);
    expect(missing.findings.map(({ code, where }) => [code, where.file])).toEqual([
      ['gpx-missing', 'race.json'],
      ['gpx-missing', 'race.json'],
    ]);
    expect(reviewPlan({ plan: '{' }).ok).toBe(false);
    // A name that every object has is no file.
    const odd: PlanInput = {
      ...(MINIMAL_PLAN as unknown as PlanInput),
      courses: [{ id: 'c', gpx: 'constructor' }],
      races: [{ id: 'r', course: 'c' }],
      stations: [],
    };
    expect(reviewPlan({ plan: odd }).findings[0]?.code).toBe('gpx-missing');
  });

  it('reads past results from text and from bytes', () => {
    const written = JSON.parse(plan) as { races: object[] };
    const csv = 'time\n1:30:00\n2:00:00\n2:30:00\n';
    const races = written.races.map((race) => ({ ...race, finish: { csv: 'past.csv', column: 'time' } }));
    const job = { plan: { ...written, races } as unknown as PlanInput };
    const [text, bytes] = [csv, new TextEncoder().encode(csv)].map((content) =>
      valueOf(reviewPlan({ ...job, files: { ...files, 'past.csv': content } })),
    );
    expect(bytes!.analysis.day).toEqual(text!.analysis.day);
    expect(text!.analysis.findings.map(({ code }) => code)).not.toContain('results-missing');
    expect(reviewPlan({ ...job, files }).findings.map(({ code }) => code)).toContain('results-missing');
  });
});

describe('a layout in one call', () => {
  it('is that of the analysis, race day with it, and its findings come before those of the checks', () => {
    const { analysis } = valueOf(reviewPlan({ plan, files }));
    const laid = layoutPlan({ plan, files });
    const { courses, stations, spacing } = valueOf(laid).layout;
    expect({ stations, spacing, day: valueOf(laid).day!.stations }).toEqual({
      stations: analysis.stations,
      spacing: analysis.spacing,
      day: analysis.day!.stations,
    });
    expect(courses).toHaveLength(analysis.courses.length);
    expect(analysis.findings.slice(0, laid.findings.length)).toEqual(laid.findings);
  });

  it('is refused where the plan cannot be laid out, with places', () => {
    const beyond = plan.replace(/"measure": "[\d.]+ km"/u, '"measure": "900 km"');
    expect(beyond).not.toBe(plan);
    const { ok, findings } = layoutPlan({ plan: beyond, files });
    expect([ok, findings.at(-1)?.code, findings.at(-1)?.where.file]).toEqual([
      false,
      'measure-beyond-course',
      'plan.json',
    ]);
  });
});
