/** Streets beside the courses become a file of the plan, as one step of undo. */
import { editPlan, type Finding } from '@halfcup/core';
import type { Ground } from '@halfcup/core/ground';
import type { OpenPlan, Store } from '../store/store.ts';
import { dropTrial } from '../store/trial.ts';
import { run } from './workbench.ts';

interface Kept {
  readonly ground: Ground;
  readonly file: Blob;
  readonly findings: readonly Finding[];
}

/** A name that no file of the plan has had: an earlier map stays, so that a step back finds it. */
function freeName({ files, document }: OpenPlan): string {
  const taken = new Set([...files.originals.keys(), document.plan.ground ?? '', document.plan.context ?? '']);
  let name = 'ground.geojson';
  for (let k = 2; taken.has(name); k++) name = `ground-${k}.geojson`;
  return name;
}

/** Keeps streets with the plan; where that is refused, the plan is as it was. */
export function addStreets(store: Store, from: string, { ground, file, findings: found }: Kept): readonly Finding[] {
  dropTrial(store);
  const before = store.open.value;
  if (before === null) return [];
  const name = freeName(before);
  const { files } = before;
  store.open.value = {
    ...before,
    files: {
      ...files,
      ground: new Map([...files.ground, [name, ground] as const]),
      originals: new Map([...files.originals, [name, file] as const]),
      findings: [...files.findings, ...found],
    },
  };
  const findings = run(store, {
    label: `add streets from ${from}`,
    edit: ({ document }) => editPlan(document.text, '/ground', name),
  });
  if (findings.length > 0) store.open.value = before;
  return findings;
}
