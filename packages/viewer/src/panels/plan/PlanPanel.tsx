/** Everything that the plan holds beside its stations. */
import type { JSX } from 'preact';

export function PlanPanel(): JSX.Element {
  return <p class="empty">No plan is open.</p>;
}
