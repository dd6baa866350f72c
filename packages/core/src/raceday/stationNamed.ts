/** A station as people name it in a table: by its id, or by its name, without case and accents. */
import type { Plan } from '../plan/plan.ts';
import { shortText } from '../text/found.ts';
import { plainHead } from './namedTable.ts';

/** Stations of a plan that are shown, and how many more there are. */
export interface KnownStations {
  readonly known: readonly string[];
  readonly more: number;
}

const SHOWN = 6;

/** The id of the station that is named; not ok where none is, or a name is that of several and of no id. */
export function stationNamed(
  { stations }: Plan,
  word: string,
): { readonly ok: true; readonly id: string } | { readonly ok: false; readonly known: KnownStations } {
  const asked = plainHead(word);
  const exact = stations.find(({ id }) => id === word.trim());
  const by = (of: (station: Plan['stations'][number]) => string): readonly string[] =>
    stations.filter((station) => plainHead(of(station)) === asked).map(({ id }) => id);
  const found =
    exact === undefined ? [by(({ id }) => id), by(({ name }) => name)].find((ids) => ids.length === 1) : [exact.id];
  if (found !== undefined && asked !== '') return { ok: true, id: found[0]! };
  const known = stations.slice(0, SHOWN).map(({ id, name }) => shortText(name === id ? id : `${id} (${name})`));
  return { ok: false, known: { known, more: stations.length - known.length } };
}
