/** A button that prints the reviewer's report of what is shown. */
import type { JSX } from 'preact';
import { useStore, type Store } from '../../state/store/store.ts';
import { planWithoutTrial } from '../../state/store/trial.ts';

async function print(store: Store): Promise<void> {
  const open = planWithoutTrial(store);
  if (open === null) return;
  try {
    const [{ reportOf }, { printPaper }] = await Promise.all([
      import('../../papers/report.ts'),
      import('../../papers/printPaper.ts'),
    ]);
    await printPaper(await reportOf(open, store.placed.value));
  } catch (error) {
    store.notice.value = {
      text: `The report was not made: ${error instanceof Error ? error.message : String(error)}.`,
    };
  }
}

export function PrintReport(): JSX.Element {
  const store = useStore();
  return (
    <button type="button" onClick={() => void print(store)}>
      Print the report
    </button>
  );
}
