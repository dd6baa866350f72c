/** Positions kept under names, and two of them side by side. */
import type { JSX } from 'preact';

export function VariantsPanel(): JSX.Element {
  return <p class="empty">No plan is open.</p>;
}
