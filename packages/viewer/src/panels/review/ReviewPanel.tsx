/** All findings, grouped as a person wants them; points recorded on the ground; and the report of it all. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { reviewList } from '../../state/view/placed.ts';
import { AsPlaced } from '../placed/AsPlaced.tsx';
import { CheckList } from './CheckList.tsx';
import { FindingGroups } from './FindingGroups.tsx';
import { GroupChoice } from './GroupChoice.tsx';
import { PrintReport } from './PrintReport.tsx';

export function ReviewPanel(): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  if (open === null) return <p class="empty">No plan is open.</p>;
  const findings = reviewList(open, store.placed.value);
  return (
    <div class="review">
      <div class="review-head">
        <h2 id="review-heading" tabindex={-1}>
          Review
        </h2>
        <PrintReport />
      </div>
      {findings.length === 0 ? (
        <p class="soft">No problems found. That is not a permit: see the caution below.</p>
      ) : (
        <>
          <GroupChoice />
          <FindingGroups open={open} />
        </>
      )}
      <AsPlaced open={open} />
      <CheckList />
    </div>
  );
}
