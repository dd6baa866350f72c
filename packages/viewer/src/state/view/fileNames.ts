/** Names of what the page saves: after the plan, and never that of a file that the plan was made from. */
import type { OpenPlan } from '../store/store.ts';

/** A plan's name as part of a file's: "ganneth-island". */
export const plainName = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-|-$/gu, '')
    .slice(0, 60) || 'plan';

/** "ganneth-island-stations.gpx"; with a number where one of the plan's own files is called so. */
export function savedName({ document, files }: OpenPlan, part: string, ending: string): string {
  const base = [plainName(document.plan.name), part].filter((one) => one !== '').join('-');
  const taken = new Set([...files.originals.keys()].map((name) => name.slice(name.lastIndexOf('/') + 1).toLowerCase()));
  let name = `${base}${ending}`;
  for (let k = 2; taken.has(name.toLowerCase()); k++) name = `${base}-${k}${ending}`;
  return name;
}
