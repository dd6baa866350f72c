/** Which variant is shown. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { MAIN_PLAN } from '../../state/edits/variants.ts';
import { showVariant } from '../../state/edits/workbench.ts';

export function VariantChoice(): JSX.Element | null {
  const store = useStore();
  const open = store.open.value;
  const variants = open?.document.plan.variants ?? [];
  if (open === null || variants.length === 0) return null;
  return (
    <label class="field variant-choice">
      <span class="soft variant-word">Variant</span>
      <select
        aria-label="Variant shown"
        value={open.variant ?? ''}
        onChange={(event) =>
          void showVariant(store, event.currentTarget.value === '' ? null : event.currentTarget.value)
        }
      >
        <option value="">{MAIN_PLAN}</option>
        {variants.map(({ name }) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
