/**
 * Files that once made Halfcup hang, fail or say nothing, found by people and programs that tried to break it. What is said of
 * each stands beside them in `said.json` (`UPDATE=1` writes it anew): read it before it is kept.
 */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { expect, it } from 'vitest';
import { FIXTURES, jsonText, updating } from './support/fixtures.ts';
import { type Ended, halfcupIn } from './support/halfcup.ts';

const FOLDER = join(FIXTURES, 'odd-files');
const SAID = join(FOLDER, 'said.json');
const update = updating(process.env);
const names = readdirSync(FOLDER).filter((name) => name !== 'said.json');

const CALLS: Readonly<Record<string, (name: string) => readonly string[]>> = {
  '.gpx': (name) => ['course', name],
  '.json': (name) => ['review', name],
  '.csv': (name) => ['start', 'Quay run', 'course.gpx', '--stations', name],
};

/** The exit, what is said on stderr, and of a review the errors that it finds. */
const saidOf = ({ exit, out, err }: Ended): readonly string[] => [
  `exit ${exit}`,
  ...err.split('\n').filter((line) => line !== ''),
  ...out.split('\n').filter((line) => /^\d+ errors?\b/u.test(line)),
];

const expected = update ? {} : (JSON.parse(readFileSync(SAID, 'utf8')) as Record<string, readonly string[]>);

it.each(names)('%s', async (name) => {
  const ended = await halfcupIn(FOLDER, ...CALLS[extname(name)]!(name));
  expect(ended.out + ended.err).not.toMatch(/[^\n\P{Cc}]|[\u202a-\u202e\u2066-\u2069]/u);
  const said = saidOf(ended);
  if (update) {
    expected[name] = said;
    writeFileSync(SAID, `${jsonText(expected)}\n`);
  }
  expect(said).toEqual(expected[name]);
});

it('is told of each of them, and of no file that is gone', () => {
  expect(Object.keys(expected).toSorted()).toEqual(names.toSorted());
});
