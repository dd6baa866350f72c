/**
 * What findings say, over all fixtures and many broken files and plans, in each language and system of units: sentences
 * that a person who runs a race can read, without what only a program knows.
 */
import { expect, describe, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Finding, type Plan, analyse, findingSentence, readPlan, reviewPlaced } from '@halfcup/core';
import { voiceOf } from '@halfcup/core/sentences';
import { type UnitSystem } from '@halfcup/core/units';
import { type GpxDocument, readGpx } from '@halfcup/core/gpx';
import { findings as english } from '../packages/core/src/text/en/findings.ts';
import { findings as spanish } from '../packages/core/src/text/es/findings.ts';
import { SPOKEN_LANGUAGES } from '../packages/core/src/text/inWords.ts';
import { ROOT } from './support/build.ts';
import { CASES, sourceOf } from './support/fixtures.ts';
import { PLAN, brokenGpx, brokenPlan, randomOf } from './support/mutations.ts';

const TEXTS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { en: english, es: spanish };

/** Findings with the plan that they are about, where it could be read. */
interface Told {
  readonly plan: Plan | null;
  readonly findings: readonly Finding[];
}

const documentsOf = (name: string): ReadonlyMap<string, GpxDocument> =>
  new Map(
    Object.entries(sourceOf(name).gpx).flatMap(([file, text]) => {
      const read = readGpx(text, file);
      return read.ok ? [[file, read.value]] : [];
    }),
  );

/** All that is found in a plan's text: while it is read, laid out, reviewed, and with its items recorded 30 m off. */
function toldOf(text: string, gpx: ReadonlyMap<string, GpxDocument>): Told[] {
  const read = readPlan(text, 'plan.json');
  if (!read.ok) return [{ plan: null, findings: read.findings }];
  const { plan } = read.value;
  const made = analyse(plan, { gpx });
  const found = made.ok ? made.value.findings : made.findings;
  const told: Told[] = [{ plan, findings: [...read.findings, ...found] }];
  if (!made.ok) return told;
  const points = made.value.stations.slice(0, 4).flatMap(({ id, directions }, k) =>
    (directions[0]?.items ?? []).flatMap(({ kind, at }) => {
      const [first] = at ?? [];
      const name = `${id} ${kind === 'sportsDrink' ? 'sports drink' : kind}`;
      return first === undefined || first === null
        ? []
        : [{ name, at: [first[0], first[1] + (k % 2) * 0.0003] as const, hdop: k === 2 ? 4 : 0.2 }];
    }),
  );
  const waypoints = points.map(
    ({ name, at: [lon, lat], hdop }) => `<wpt lat="${lat}" lon="${lon}"><name>${name}</name><hdop>${hdop}</hdop></wpt>`,
  );
  const recorded = readGpx(
    `<gpx version="1.1" creator="tests" xmlns="http://www.topografix.com/GPX/1/1">${waypoints.join('')}</gpx>`,
    'points.gpx',
  );
  if (recorded.ok) told.push({ plan, findings: reviewPlaced(made.value, recorded.value).findings });
  return told;
}

/** The plan of a case, changed so that more is wrong with it. */
function strict(text: string): string {
  const plan = JSON.parse(text) as { practice?: object; stations: Record<string, unknown>[] };
  return JSON.stringify({
    ...plan,
    practice: { ...plan.practice, clearWidth: '9 m', maxSpacing: '1.5 km', minSpacing: '1.4 km', snapRadius: '4 m' },
    stations: plan.stations.map((station, k) => ({
      ...station,
      ...(k % 2 === 0 ? { practice: { signAhead: '60 m', bendClear: '200 m' }, width: '5 m' } : { side: 'left' }),
    })),
  });
}

const ALL: readonly Told[] = (() => {
  const random = randomOf(20_271_112);
  const good = documentsOf('half-joins');
  const broken = Array.from({ length: 400 }, () => toldOf(brokenPlan(random), good));
  const files = Array.from({ length: 400 }, () => readGpx(brokenGpx(random), 'course.gpx'));
  const cases = CASES.flatMap((name) => {
    const { plan } = sourceOf(name);
    return [plan, strict(plan)].flatMap((text) => toldOf(text, documentsOf(name)));
  });
  return [
    ...cases,
    ...toldOf(PLAN, good),
    ...broken.flat(),
    ...files.map(({ findings }) => ({ plan: null, findings })),
  ];
})();

const NAMELESS: Plan = (() => {
  const read = readPlan(sourceOf('out-and-back').plan, 'plan.json');
  if (!read.ok) throw new Error('the plan does not read');
  return read.value.plan;
})();

/** Keys of plans that no sentence of a person has: those written in two words without a space. */
const KEYS = new Set(
  readFileSync(join(ROOT, 'packages/core/src/plan/plan.ts'), 'utf8').match(/\b[a-z]+[A-Z]\w+(?=\??:)/gu),
);

const FOREIGN: Readonly<Record<UnitSystem, RegExp>> = {
  metric: /\d\s(?:yd|ft|mi|lb|gal)(?!\p{L})/u,
  imperial: /\d\s(?:m|km|kg|l|L)(?!\p{L})/u,
};

/** What is a fault in a part of a finding's sentence. */
function faultsOf(part: string, units: UnitSystem, quoted: readonly string[]): string[] {
  // What was typed into the file, which is quoted as it stands; markup to be written into a file, which is not a quotation;
  // and examples for those who type, who may use either system's units.
  const own = part
    .replaceAll(/“[^”]*”|«[^»]*»/gu, (text) => (quoted.includes(text.slice(1, -1)) ? text : '“”'))
    .replaceAll(/<\?xml[^>]*>|\w+="[^"]*"/gu, 'markup')
    .replace('100 yd or 90 m', 'a length')
    .replace('100 yd o 90 m', 'a length');
  return [
    /"[^"]*"/u.test(own) ? 'straight quotes' : null,
    quoted.some((id) => own.includes(`“${id}”`)) ? 'an id in quotes' : null,
    own.match(/\b[a-z]+[A-Z]\w*/gu)?.some((word) => KEYS.has(word)) === true ? 'a JSON key' : null,
    FOREIGN[units].test(own) ? 'the other system’s units' : null,
    /common practice, no source|práctica común, sin fuente/iu.test(own) ? 'its source' : null,
    /[−-]0(?![.,\d:])/u.test(own) ? 'minus nought' : null,
    /undefined|NaN|Infinity|\[object/u.test(own) ? 'a value of the program' : null,
    own.split(/\s+/u).length > 30 ? 'more than 30 words' : null,
  ].filter((fault) => fault !== null);
}

describe('every code', () => {
  it.each(SPOKEN_LANGUAGES)('has its text in the language %s', (language) => {
    const texts = TEXTS[language]!;
    expect(Object.keys(texts).sort()).toEqual(Object.keys(english).sort());
    for (const [code, text] of Object.entries(texts)) expect(text, `${code}, ${language}`).toBeTypeOf('function');
  });

  it('that is found anywhere has a text', () => {
    const codes = new Set(ALL.flatMap(({ findings }) => findings.map(({ code }) => code)));
    expect(codes.size).toBeGreaterThan(60);
    expect([...codes].filter((code) => !Object.hasOwn(english, code))).toEqual([]);
  });
});

describe.each(SPOKEN_LANGUAGES)('the sentences in the language %s', (language) => {
  it.each(['metric', 'imperial'] as const)('are short and are about the road, not the program: %s', (units) => {
    const faults = new Set<string>();
    let sentences = 0;
    for (const { plan, findings } of ALL) {
      const voice = voiceOf(plan ?? NAMELESS, { language, units });
      const named = plan === null ? [] : [...plan.stations, ...plan.races, ...plan.courses];
      // An id may be a name too, where the plan gives none.
      const ids = named.filter(({ id, name }) => id !== name).map(({ id }) => id);
      for (const finding of findings) {
        for (const part of findingSentence(finding, voice)) {
          if (part === null || part === undefined || part === '') continue;
          sentences++;
          // A plan may name its stations as it likes.
          const own = named.reduce((text, { name }) => (name === '' ? text : text.replaceAll(name, 'Name')), part);
          for (const fault of faultsOf(own, units, ids)) faults.add(`${finding.code}: ${fault}: ${part}`);
        }
      }
    }
    expect(sentences).toBeGreaterThan(1000);
    expect([...faults]).toEqual([]);
  });
});
