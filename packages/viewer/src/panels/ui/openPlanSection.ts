/** Shows the Plan pane with one of its sections unfolded, and the focus there. */
import type { Store } from '../../state/store/store.ts';

export function openPlanSection(store: Store, section: 'races' | 'vehicles' | 'prices'): void {
  store.pane.value = 'plan';
  requestAnimationFrame(() => {
    const found = document.getElementById(`plan-${section}`);
    if (!(found instanceof HTMLDetailsElement)) return;
    found.open = true;
    found.querySelector('summary')?.focus();
    found.scrollIntoView({ block: 'start' });
  });
}
