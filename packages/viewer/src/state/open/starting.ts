/** From courses and the answers about them to an open plan. Changes nothing. */
import { readPlan, type Finding, type Result } from '@halfcup/core';
import { cleaned } from '@halfcup/core/geometry';
import { readGpx, writeGpx } from '@halfcup/core/gpx';
import { setUpPlan, type SetUpAnswers } from '@halfcup/core/plan';
import type { CourseFile, OpenPlan, Starting } from '../store/store.ts';
import { computeOpen } from '../view/compute.ts';
import { plainName } from '../view/fileNames.ts';

/** A plan with its courses alone, and the text that the answers make of it. */
export interface Started {
  readonly bare: OpenPlan;
  readonly text: string;
}

/** The file without the spikes and tangles of its tracks, under a name of its own; the file itself where there are none. */
export function fixedFile(file: CourseFile): CourseFile {
  const tracks = file.document.tracks.map((track) => ({ track, ...cleaned(track.segments) }));
  if (tracks.every(({ removed }) => removed.length === 0)) return file;
  const { document } = file;
  const text = writeGpx({
    creator: 'Halfcup',
    ...(document.name === null ? {} : { name: document.name }),
    waypoints: document.waypoints.map(({ lon, lat, name }) => ({ lon, lat, ...(name === null ? {} : { name }) })),
    tracks: tracks.map(({ track, segments }) => ({ ...(track.name === null ? {} : { name: track.name }), segments })),
  });
  const name = file.name.replace(/(\.gpx)?$/iu, '-fixed.gpx');
  const read = readGpx(text, name);
  if (!read.ok) throw new Error(`a fixed track cannot be read: ${read.findings[0]?.message ?? ''}`);
  return { name, document: { ...read.value, routes: document.routes }, original: new Blob([text]) };
}

/** Every problem, where the answers make no plan. */
export function startedFrom(starting: Starting, answers: SetUpAnswers): Result<Started> {
  const documents = new Map(starting.files.map(({ name, document }) => [name, document]));
  const made = setUpPlan(answers, documents);
  if (!made.ok) return made;
  const alone = setUpPlan({ ...answers, marks: false, stations: { from: 'none' } }, documents);
  if (!alone.ok) return alone;
  const file = `${plainName(answers.name)}.json`;
  const read = readPlan(alone.value, file);
  if (!read.ok) return read;
  const used = starting.files.filter(({ name }) => answers.courses.some(({ gpx }) => gpx === name));
  const findings: readonly Finding[] = [...starting.findings, ...made.findings];
  const bare = computeOpen(
    read.value,
    {
      gpx: new Map(used.map(({ name, document }) => [name, document])),
      results: new Map(),
      ground: new Map(),
      context: null,
      findings,
      originals: new Map(used.map(({ name, original }) => [name, original])),
    },
    null,
    null,
  );
  return bare.ok ? { ok: true, value: { bare: bare.value, text: made.value }, findings: made.findings } : bare;
}

/** The plan with all that was answered. */
export function wholeOf({ bare, text }: Started): Result<OpenPlan> {
  const read = readPlan(text, bare.document.file);
  return read.ok ? computeOpen(read.value, bare.files, null, bare) : read;
}
