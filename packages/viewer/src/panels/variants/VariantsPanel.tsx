/** Positions kept under names, two of them side by side, and better ones searched for. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { keepPositions, tryPositions } from '../../state/edits/variants.ts';
import { ImproveSection } from '../improve/ImproveSection.tsx';
import { NameForm } from '../ui/NameForm.tsx';
import { LIST_HEADING, PositionsList } from './PositionsList.tsx';
import { SideBySide } from './SideBySide.tsx';

export function VariantsPanel(): JSX.Element {
  const store = useStore();
  if (store.open.value === null) return <p class="empty">No plan is open.</p>;
  return (
    <div class="variants">
      <section aria-labelledby={LIST_HEADING}>
        <h2 id={LIST_HEADING} tabindex={-1}>
          Positions
        </h2>
        <p class="soft">A station that is moved or changed while kept positions are shown is changed in these alone.</p>
        <PositionsList />
        <NameForm
          label="Name"
          actions={[
            {
              label: 'Keep the positions shown',
              title: 'Writes down where every station stands now',
              act: (name) => {
                const found = keepPositions(store, name);
                if (found.length === 0) store.notice.value = { text: `Kept as ${name}` };
                return found;
              },
            },
            {
              label: 'Try others',
              title: 'Shows the plan’s positions again under this name, to be changed',
              act: (name) => {
                const found = tryPositions(store, name);
                if (found.length === 0)
                  store.notice.value = { text: `Shown: ${name}. Move stations; the plan’s own positions stay.` };
                return found;
              },
            },
          ]}
        />
      </section>
      <SideBySide />
      <ImproveSection />
    </div>
  );
}
