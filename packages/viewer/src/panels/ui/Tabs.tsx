/** One panel at a time; arrow keys move between the tabs. */
import type { ComponentChildren, JSX } from 'preact';
import { fold, FoldButton } from './FoldButton.tsx';
import { useStore, type Pane } from '../../state/store/store.ts';

export interface Tab {
  readonly pane: Pane;
  readonly label: string;
  /** Shown beside the label, and how it is read out. */
  readonly count?: number;
  readonly content: () => ComponentChildren;
}

export function Tabs({ tabs, label }: { readonly tabs: readonly Tab[]; readonly label: string }): JSX.Element {
  const store = useStore();
  const current = tabs.find((tab) => tab.pane === store.pane.value) ?? tabs[0];
  const move = (event: KeyboardEvent): void => {
    const at = tabs.findIndex((tab) => tab.pane === current?.pane);
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: at + 1,
      ArrowLeft: at - 1,
      Home: 0,
      End: tabs.length - 1,
    };
    const to = steps[event.key];
    const next = to === undefined ? undefined : tabs[(to + tabs.length) % tabs.length];
    if (next === undefined) return;
    event.preventDefault();
    store.pane.value = next.pane;
    document.getElementById(`tab-${next.pane}`)?.focus();
  };
  return (
    <>
      <div class="tabs-row">
        <div class="tabs" role="tablist" aria-label={label}>
          {tabs.map((tab) => (
            <button
              key={tab.pane}
              id={`tab-${tab.pane}`}
              type="button"
              role="tab"
              aria-selected={tab.pane === current?.pane}
              aria-controls="panel"
              tabindex={tab.pane === current?.pane ? 0 : -1}
              onClick={() => {
                store.pane.value = tab.pane;
                fold(store, 'panel', false);
              }}
              onKeyDown={move}
            >
              {tab.label}
              {tab.count === undefined ? null : <span class="tab-count">{tab.count}</span>}
            </button>
          ))}
        </div>
        {store.narrow.value ? <FoldButton part="panel" name="Panel under the map" controls="panel" /> : null}
      </div>
      <div
        key={current?.pane}
        id="panel"
        class={`panel panel-${current?.pane ?? ''}`}
        role="tabpanel"
        aria-labelledby={`tab-${current?.pane ?? ''}`}
        tabindex={0}
        hidden={store.narrow.value && store.folds.value.has('panel')}
      >
        {current?.content()}
      </div>
    </>
  );
}
