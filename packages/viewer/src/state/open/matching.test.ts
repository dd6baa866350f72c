import { expect, test } from 'vitest';
import { demoFile, textFile } from '../../testing.ts';
import type { NamedFile } from './fileKinds.ts';
import { gatherFiles } from './gather.ts';
import { matched, type Found } from './matching.ts';

const found = (...names: string[]): Found<string>[] =>
  names.map((name) => ({ file: textFile(name, ''), content: name }));
const of = (wanted: string[], ...names: string[]): unknown => {
  const { sure, unclear } = matched(wanted, found(...names));
  return {
    sure: Object.fromEntries([...sure].map(([name, { file }]) => [name, file.name])),
    asked: unclear.map(({ one, names: may }) => [one.file.name, ...may]),
  };
};

test('a file answers for the one name that it can mean', () => {
  expect(of(['course.gpx'], 'course.gpx')).toEqual({ sure: { 'course.gpx': 'course.gpx' }, asked: [] });
  expect(of(['tracks/course.gpx'], 'course.gpx')).toEqual({ sure: { 'tracks/course.gpx': 'course.gpx' }, asked: [] });
  expect(of(['course.gpx'], 'far/away/course.gpx', 'other.gpx')).toEqual({
    sure: { 'course.gpx': 'far/away/course.gpx' },
    asked: [],
  });
});

test('one file never answers for two names: it is asked about', () => {
  expect(of(['a/course.gpx', 'b/course.gpx'], 'course.gpx')).toEqual({
    sure: {},
    asked: [['course.gpx', 'a/course.gpx', 'b/course.gpx']],
  });
});

test('folders decide where they are known, and the longest name has the first word', () => {
  expect(of(['a/course.gpx', 'b/course.gpx'], 'plan/b/course.gpx', 'plan/a/course.gpx')).toEqual({
    sure: { 'a/course.gpx': 'plan/a/course.gpx', 'b/course.gpx': 'plan/b/course.gpx' },
    asked: [],
  });
  expect(of(['course.gpx', 'b/course.gpx'], 'plan/b/course.gpx', 'plan/course.gpx')).toEqual({
    sure: { 'b/course.gpx': 'plan/b/course.gpx', 'course.gpx': 'plan/course.gpx' },
    asked: [],
  });
});

test('of two files that may be the same one, none is taken by chance', () => {
  expect(of(['course.gpx'], 'x/course.gpx', 'y/course.gpx')).toEqual({
    sure: {},
    asked: [
      ['x/course.gpx', 'course.gpx'],
      ['y/course.gpx', 'course.gpx'],
    ],
  });
});

const planOf = (change: (plan: Record<string, unknown>) => void): NamedFile => {
  const plan = JSON.parse(Buffer.from(demoFile('plan.json').bytes).toString('utf8')) as Record<string, unknown>;
  change(plan);
  return textFile('plan.json', JSON.stringify(plan));
};

test('a plan of two files of one name waits for both and keeps what is unclear; each answer takes one name away', () => {
  const plan = planOf((record) => {
    const courses = record['courses'] as { gpx?: string }[];
    const named = courses.filter(({ gpx }) => gpx !== undefined);
    named[0]!.gpx = 'a/course.gpx';
    named[1]!.gpx = 'b/course.gpx';
  });
  const file = { name: 'course.gpx', bytes: demoFile('full.gpx').bytes };
  const first = gatherFiles([plan, file], null);
  if (first.kind !== 'waiting') throw new Error(`expected a plan that waits, found ${first.kind}`);
  expect(first.plan.missing).toEqual(['a/course.gpx', 'b/course.gpx']);
  expect(first.plan.unclear.map(({ name, names }) => [name, ...names])).toEqual([
    ['course.gpx', 'a/course.gpx', 'b/course.gpx'],
  ]);
  const second = gatherFiles([{ ...file, name: 'a/course.gpx' }], first.plan);
  if (second.kind !== 'waiting') throw new Error(`expected a plan that waits, found ${second.kind}`);
  expect(second.plan.missing).toEqual(['b/course.gpx']);
  const third = gatherFiles([{ name: 'course.gpx', bytes: demoFile('half.gpx').bytes }], second.plan);
  expect(third.kind).toBe('ready');
});

const latin = (name: string, text: string): NamedFile => ({ name, bytes: new Uint8Array(Buffer.from(text, 'latin1')) });

test('a plan in Latin-1 is refused with the place of the byte, not opened with its letters lost', () => {
  const text = Buffer.from(demoFile('plan.json').bytes).toString('utf8').replace('"name": "', '"name": "Café ');
  const gathered = gatherFiles([latin('plan.json', text), demoFile('full.gpx'), demoFile('half.gpx')], null);
  if (gathered.kind !== 'refused') throw new Error(`expected a refusal, found ${gathered.kind}`);
  expect(gathered.findings.map(({ code }) => code)).toEqual(['text-encoding']);
  expect(gathered.findings[0]!.message).toMatch(/^Byte \d+ of this file \(hex E9\) is not valid UTF-8\./u);
  expect(gathered.findings[0]!.where.line).toBeGreaterThan(1);
});

test('results in Latin-1 refuse the whole; a drawing in Latin-1 is left out with a warning', () => {
  const results = planOf((record) => {
    const [race] = record['races'] as { finish?: unknown }[];
    race!.finish = { csv: 'times.csv', column: 'time' };
  });
  const files = [demoFile('full.gpx'), demoFile('half.gpx')];
  const refused = gatherFiles([results, ...files, latin('times.csv', 'name,time\nRené,1:00:00\n')], null);
  if (refused.kind !== 'refused') throw new Error(`expected a refusal, found ${refused.kind}`);
  expect(refused.findings.filter(({ severity }) => severity === 'error').map(({ where }) => where)).toEqual([
    { file: 'times.csv', line: 2, column: 4 },
  ]);
  const drawing = latin('context.geojson', '{"type":"FeatureCollection","features":[],"name":"Café"}');
  const opened = gatherFiles([demoFile('plan.json'), ...files, drawing], null);
  if (opened.kind !== 'ready') throw new Error(`expected a plan, found ${opened.kind}`);
  expect(opened.files.context).toBeNull();
  expect(opened.files.findings.map(({ code, severity }) => [code, severity])).toEqual([['text-encoding', 'warning']]);
});
