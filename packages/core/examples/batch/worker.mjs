/** A worker thread's job: the text of a plan in, its counts and the codes of its errors out. */
import { readFile } from 'node:fs/promises';
import { reviewPlan } from '@halfcup/core';
import { countsOf } from '@halfcup/core/schemas';
import { readGpx } from '@halfcup/core/gpx';
import { DEMO } from '../plans.mjs';

// All plans run on the same two courses: each thread reads them once.
const gpx = new Map();
for (const name of ['full.gpx', 'half.gpx']) gpx.set(name, usable(readGpx(await readFile(new URL(name, DEMO)), name)));

export default function review(text) {
  const { findings, checks } = usable(reviewPlan({ plan: text, files: gpx })).analysis;
  const standing = findings.filter(({ severity, waived }) => severity === 'error' && waived === undefined);
  return { counts: countsOf(findings, checks), errors: standing.map(({ code }) => code) };
}

/** What cannot be used says why: here that ends the batch. */
function usable(result) {
  if (result.ok) return result.value;
  throw new Error(result.findings.map(({ message }) => message).join('\n'));
}
