/** Shows what came of opening files. */
import { batch } from '@preact/signals';
import { EMPTY_HISTORY } from '../store/history.ts';
import type { Origin, Store } from '../store/store.ts';
import { coursesOf } from '../view/derive.ts';
import type { Opening } from './open.ts';

/** A name that no other kept plan has. */
export const freshId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');

/** Shows what came of opening files; a refusal leaves the open plan as it was. `origin`: what is known of where the files came from. */
export function receive(store: Store, names: readonly string[], opening: Opening, origin: Partial<Origin> = {}): void {
  batch(() => {
    store.loading.value = false;
    store.refusal.value = null;
    if (opening.kind === 'refused') {
      store.refusal.value = { files: names, findings: opening.findings };
      return;
    }
    if (opening.kind === 'waiting') {
      store.waiting.value = opening.plan;
      return;
    }
    if (opening.kind === 'starting') {
      store.starting.value = opening.starting;
      return;
    }
    const { plan } = opening;
    store.starting.value = null;
    store.arrived.value = null;
    store.waiting.value = null;
    store.trial.value = null;
    store.history.value = EMPTY_HISTORY;
    store.origin.value = {
      id: freshId(),
      from: 'file',
      saved: opening.started === true ? null : plan.document.text,
      handle: null,
      modified: null,
      copy: false,
      ...origin,
    };
    store.open.value = plan;
    store.selected.value = null;
    store.cursor.value = null;
    store.asked.value = null;
    store.against.value = null;
    store.placed.value = null;
    store.improved.value = null;
    store.stripView.value = null;
    store.units.value = plan.document.plan.units;
    store.course.value = plan.document.plan.races[0]?.course ?? coursesOf(plan.analysis)[0]?.id ?? null;
    store.destination.value = { kind: 'whole' };
  });
}
