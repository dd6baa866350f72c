/** Variants of the plan, two of them compared, and better places searched for. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { saveAsVariant, newVariant } from '../../state/edits/variants.ts';
import { ImproveSection } from '../improve/ImproveSection.tsx';
import { NameForm } from '../ui/NameForm.tsx';
import { LIST_HEADING, VariantList } from './VariantList.tsx';
import { SideBySide } from './SideBySide.tsx';

export function VariantsPanel(): JSX.Element {
  const store = useStore();
  if (store.open.value === null) return <p class="empty">No plan is open.</p>;
  return (
    <div class="variants">
      <section aria-labelledby={LIST_HEADING}>
        <h2 id={LIST_HEADING} tabindex={-1}>
          Variants
        </h2>
        <p class="soft">Edits made while a variant is shown change only that variant.</p>
        <VariantList />
        <NameForm
          label="Name of a variant"
          actions={[
            {
              label: 'Save current as variant',
              title: 'Saves where every station stands now',
              act: (name) => {
                const found = saveAsVariant(store, name);
                if (found.length === 0) store.notice.value = { text: `Saved as ${name}` };
                return found;
              },
            },
            {
              label: 'New variant',
              title: 'Starts from the main plan, which stays as it is',
              act: (name) => {
                const found = newVariant(store, name);
                if (found.length === 0)
                  store.notice.value = { text: `Showing ${name}. Moving stations now changes only this variant.` };
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
