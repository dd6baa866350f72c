/** A button that prints the reviewer's report of what is shown. */
import type { JSX } from 'preact';
import { reasonOf } from '../../trouble.ts';
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
      text: `The report could not be made: ${reasonOf(error)}.`,
    };
  }
}

export function PrintReport(): JSX.Element {
  const store = useStore();
  return (
    <button type="button" onClick={() => void print(store)}>
      Print report
    </button>
  );
}
