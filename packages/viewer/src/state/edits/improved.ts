/** What may be done with better places that were found: apply them to what is shown, or save them as a variant. */
import { type Finding, type Improvement } from '@halfcup/core';
import { type PlanStation } from '@halfcup/core/plan';
import { movedText } from '@halfcup/core/stages';
import { moveStation, setOfStation, together, type Command } from './edits.ts';
import { placementOf } from './placing.ts';
import type { Improved, OpenPlan, Store } from '../store/store.ts';
import { addVariant, patchesShown } from './variants.ts';
import { run } from './workbench.ts';

/** Whether the plan is still what was improved. */
export const stillOf = (open: OpenPlan, { text, variant }: Improved): boolean =>
  open.document.text === text && open.variant === variant;

type Move = Improvement['moves'][number];

const stationOf = ({ stations }: Improved, { station }: Move): PlanStation =>
  stations.find(({ id }) => id === station)!;

/** In a variant an item placed by hand is given up by saying that there is none. */
function moveCommand(improved: Improved, move: Move): Command {
  const moved = moveStation(move.station, move.name, placementOf(stationOf(improved, move)), null);
  return move.dropped.length === 0 ? moved : together('', [moved, setOfStation(move.station, ['items'], {}, '')]);
}

const LABEL = 'apply better places';

/** Applies the moves to what is shown, as one step of undo. */
export function applyImproved(store: Store, improved: Improved): readonly Finding[] {
  if (improved.variant !== null)
    return run(
      store,
      together(
        LABEL,
        improved.moves.map((move) => moveCommand(improved, move)),
      ),
    );
  return run(store, { label: LABEL, edit: ({ document }) => movedText(document, improved.stations, improved.moves) });
}

/** Saves the moves as a variant and shows it; what was improved stays. */
export function saveImproved(store: Store, improved: Improved, name: string): readonly Finding[] {
  const open = store.open.value;
  if (open === null) return [];
  const before = patchesShown(open) as Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  const moved = improved.moves.map((move) => {
    const { at: _at, on: _on, ...own } = before[move.station] ?? {};
    return [
      move.station,
      { ...own, ...placementOf(stationOf(improved, move)), ...(move.dropped.length === 0 ? {} : { items: {} }) },
    ] as const;
  });
  return addVariant(store, name, { ...before, ...Object.fromEntries(moved) });
}
