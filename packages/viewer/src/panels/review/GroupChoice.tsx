/** How the list of findings is grouped. */
import type { JSX } from 'preact';
import { useStore, type Grouping } from '../../state/store/store.ts';
import { chooseGrouping, GROUPINGS } from '../../state/view/grouping.ts';

const WORD: Readonly<Record<Grouping, string>> = { theme: 'Theme', severity: 'Severity', station: 'Station' };

export function GroupChoice(): JSX.Element {
  const store = useStore();
  return (
    <div class="group-by">
      <span id="group-by" class="soft">
        Group by
      </span>
      <div class="group" role="group" aria-labelledby="group-by">
        {GROUPINGS.map((by) => (
          <button
            key={by}
            type="button"
            aria-pressed={store.grouping.value === by}
            onClick={() => chooseGrouping(store, by)}
          >
            {WORD[by]}
          </button>
        ))}
      </div>
    </div>
  );
}
