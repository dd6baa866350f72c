/** All findings, by severity and station; points recorded on the ground; and the report of it all. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { subjectIn } from '../../state/view/voice.ts';
import { groupedOf } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import { counted } from '../../words.ts';
import { CheckList } from './CheckList.tsx';
import { FindingCard } from './FindingCard.tsx';
import { AsPlaced } from '../placed/AsPlaced.tsx';
import { PrintReport } from './PrintReport.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { reviewList } from '../../state/view/placed.ts';

/** Within a severity: what is about no station first, then in the plan's order. */
function byStation(findings: readonly Finding[], { analysis }: OpenPlan): Finding[] {
  const order = new Map(analysis.stations.map(({ id, index }) => [id, index]));
  const rank = ({ where }: Finding): number => (where.station === undefined ? -1 : (order.get(where.station) ?? -1));
  return findings.toSorted((a, b) => rank(a) - rank(b));
}

function Groups({ open, findings }: { readonly open: OpenPlan; readonly findings: readonly Finding[] }): JSX.Element {
  return (
    <>
      {groupedOf(findings).map((group) => (
        <section key={group.severity} aria-labelledby={`group-${group.severity}`}>
          <h2 id={`group-${group.severity}`}>
            <SeverityMark severity={group.severity} />
            {group.title}
            <span class="soft">{counted(group.findings.length, 'finding')}</span>
          </h2>
          <ul class="findings">
            {byStation(group.findings, open).map((finding, index) => (
              <FindingCard
                key={`${finding.code}-${finding.where.station ?? ''}-${index}`}
                finding={finding}
                subject={subjectIn(open)(finding)}
                tools
              />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

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
        <Groups open={open} findings={findings} />
      )}
      <AsPlaced open={open} />
      <CheckList />
    </div>
  );
}
