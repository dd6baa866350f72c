/** Always on the page; in a narrow window its first sentences, and the rest unfolds. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';

const WHO =
  'Local codes, the road authority, the police and the licensed traffic-control or medical practitioner decide.';
const EMERGENCY = 'In an emergency call the local emergency number first.';

export function Caution(): JSX.Element {
  const { narrow } = useStore();
  if (!narrow.value)
    return (
      <footer class="caution">
        <strong>Distances are planning aids.</strong> {WHO} {EMERGENCY}
      </footer>
    );
  return (
    <footer class="caution">
      <details>
        <summary>
          <strong>Planning aids:</strong> local codes and authorities decide.
        </summary>
        Distances are planning aids. {WHO} {EMERGENCY}
      </details>
    </footer>
  );
}
