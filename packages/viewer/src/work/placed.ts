/**
 * Takes in points recorded on the ground. A GPX file is either a course to open or such points: the Review panel, or its
 * button, says which.
 */
import type { Finding } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { batch } from '@preact/signals';
import type { OpenPlan, Placed, Store } from '../state/store/store.ts';
import { placedView } from '../state/view/placed.ts';
import { reasonOf } from '../trouble.ts';
import { openDropped } from './dropped.ts';

const trouble = (file: string, message: string): readonly Finding[] => [
  { code: 'placed-empty', severity: 'error', message, where: { file } },
];

async function readPlaced(
  file: File,
): Promise<{ readonly placed: Placed } | { readonly findings: readonly Finding[] }> {
  try {
    const read = readGpx(new Uint8Array(await file.arrayBuffer()), file.name);
    if (!read.ok) return { findings: read.findings };
    if (read.value.waypoints.length === 0)
      return {
        findings: trouble(
          file.name,
          'This file has no waypoints. It needs one for each recorded sign, table and trash drop, named such as “s1 sign”. To open it as a course, use Open.',
        ),
      };
    return { placed: { file: file.name, document: read.value, bytes: file, findings: read.findings } };
  } catch (error) {
    return {
      findings: trouble(file.name, `The file could not be read: ${reasonOf(error)}.`),
    };
  }
}

function compare(store: Store, placed: Placed): void {
  batch(() => {
    store.refusal.value = null;
    store.placed.value = placed;
    store.pane.value = 'review';
    const name = store.open.value?.document.plan.name ?? 'the plan';
    store.notice.value = {
      text: `Comparing ${placed.file} with ${name}. The plan is unchanged.`,
    };
  });
}

/** Compares a file's points with the open plan; a file without any is shown as one that did not open. */
export async function takePlaced(store: Store, file: File): Promise<void> {
  const read = await readPlaced(file);
  if ('placed' in read) compare(store, read.placed);
  else store.refusal.value = { files: [file.name], findings: read.findings };
}

export function dropPlaced(store: Store): void {
  store.placed.value = null;
}

/** Above this many bytes nobody looks into a file to see whether it holds such points. */
const LOOKED_INTO = 4e6;

/** Whether points of a file are meant for this plan's items: it has no course at all, or names an item of the plan. */
const meant = (open: OpenPlan, placed: Placed): boolean => {
  const { tracks, routes } = placed.document;
  return tracks.length + routes.length === 0 || placedView(open, placed).verdicts.length > 0;
};

function ask(store: Store, placed: Placed, file: File): void {
  const name = store.open.value?.document.plan.name ?? 'the plan';
  const then = (act: () => void) => (): void => {
    store.notice.value = null;
    act();
  };
  store.notice.value = {
    text: `${file.name} has points named like items of ${name}.`,
    choices: [
      { label: 'Compare with the plan', act: then(() => compare(store, placed)) },
      { label: 'Open as a new plan', act: then(() => void openDropped(store, [file])) },
      { label: 'Cancel', act: then(() => undefined) },
    ],
  };
}

const isGpx = (file: File): boolean => /\.gpx$/iu.test(file.name);

/**
 * What was dropped on the page: with Review open one GPX file is points as placed; elsewhere one that names the plan's
 * items is asked about; all else is opened.
 */
export async function takeDropped(
  store: Store,
  files: readonly File[],
  handles?: Parameters<typeof openDropped>[2],
): Promise<void> {
  const open = store.open.value;
  const [file] = files;
  if (open === null || store.waiting.value !== null || file === undefined || files.length > 1 || !isGpx(file))
    return openDropped(store, files, handles);
  if (store.pane.value === 'review') return takePlaced(store, file);
  const read = file.size > LOOKED_INTO ? null : await readPlaced(file);
  if (read === null || !('placed' in read) || store.open.value === null || !meant(store.open.value, read.placed))
    return openDropped(store, files, handles);
  return ask(store, read.placed, file);
}
