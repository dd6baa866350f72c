/** All findings, by severity. */
import type { JSX } from 'preact';
import { groupedFindings } from '../state/derive.ts';
import { useStore } from '../state/store.ts';
import { counted } from '../words.ts';
import { CheckList } from './CheckList.tsx';
import { FindingCard } from './FindingCard.tsx';
import { SeverityMark } from './SeverityMark.tsx';

export function ReviewPanel(): JSX.Element {
  const { open } = useStore();
  const plan = open.value;
  if (plan === null) return <p class="empty">No plan is open.</p>;
  const groups = groupedFindings(plan);
  const names = new Map(plan.analysis.stations.map((station) => [station.id, `${station.index + 1} · ${station.name}`]));
  if (groups.length === 0) {
    return (
      <div class="review">
        <p class="empty">No findings: every check that ran holds. That is no permission: see the caution below.</p>
        <CheckList />
      </div>
    );
  }
  return (
    <div class="review">
      {groups.map((group) => (
        <section key={group.severity} aria-labelledby={`group-${group.severity}`}>
          <h2 id={`group-${group.severity}`}>
            <SeverityMark severity={group.severity} />
            {group.title}
            <span class="soft">{counted(group.findings.length, 'finding')}</span>
          </h2>
          <ul class="findings">
            {group.findings.map((finding, index) => (
              <FindingCard key={`${finding.code}-${index}`} finding={finding} station={names.get(finding.where.station ?? '') ?? null} />
            ))}
          </ul>
        </section>
      ))}
      <CheckList />
    </div>
  );
}
