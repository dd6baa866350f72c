/** The findings in groups that fold, long ones cut; a finding that somebody asks for on the map or the strip is gone to. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { groupsOf, type FindingGroup } from '../../state/view/grouping.ts';
import { subjectIn } from '../../state/view/voice.ts';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { counted } from '../../words.ts';
import { CountMarks } from '../ui/CountMarks.tsx';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { FindingCard } from './FindingCard.tsx';

/** As many cards of a group are drawn at first: what is below nobody sees at once. */
const FIRST = 40;
/** Groups after so many cards are folded until somebody unfolds them. */
const UNFOLDED = 100;

const cardKey = ({ code, where }: Finding, index: number): string => `${code}-${where.station ?? ''}-${index}`;

interface GroupProps {
  readonly group: FindingGroup;
  readonly open: OpenPlan;
  /** Its place among the groups: ids are made of it. */
  readonly at: number;
  /** How many cards stand before it. */
  readonly before: number;
}

function fold(store: Store, key: string, folded: boolean): void {
  store.folded.value = new Map(store.folded.value).set(key, folded);
}

function Cards({ group: { findings }, open }: Pick<GroupProps, 'group' | 'open'>): JSX.Element {
  const store = useStore();
  const [all, setAll] = useState(false);
  const sought = store.sought.value?.finding ?? null;
  const shown = all || (sought !== null && findings.indexOf(sought) >= FIRST) ? findings : findings.slice(0, FIRST);
  const left = findings.length - shown.length;
  const subjectOf = subjectIn(open);
  return (
    <>
      <ul class="findings">
        {shown.map((finding, index) => (
          <FindingCard
            key={cardKey(finding, index)}
            finding={finding}
            subject={subjectOf(finding)}
            heading="review-heading"
            sought={sought === finding}
            tools
          />
        ))}
      </ul>
      {left === 0 ? null : (
        <button type="button" class="findings-more" onClick={() => setAll(true)}>
          Show {left} more
        </button>
      )}
    </>
  );
}

function Group({ group, open, at, before }: GroupProps): JSX.Element {
  const store = useStore();
  const key = `${store.grouping.value} ${group.key}`;
  const folded = store.folded.value.get(key) ?? before >= UNFOLDED;
  const { severity, title, findings, counts } = group;
  return (
    <section aria-labelledby={`group-${at}`}>
      <h3 id={`group-${at}`} class="group-head">
        <button type="button" aria-expanded={!folded} onClick={() => fold(store, key, !folded)}>
          <span class="group-fold" aria-hidden="true" />
          {severity === null ? null : <SeverityMark severity={severity} />}
          <span class="group-title">{title}</span>{' '}
          {severity === null ? (
            <CountMarks counts={counts} />
          ) : (
            <span class="soft">{counted(findings.length, 'finding')}</span>
          )}
        </button>
      </h3>
      {folded ? null : <Cards group={group} open={open} />}
    </section>
  );
}

/** For each group how many cards stand before it, were all unfolded. */
function cardsBefore(groups: readonly FindingGroup[]): readonly number[] {
  const before: number[] = [];
  let cards = 0;
  for (const { findings } of groups) {
    before.push(cards);
    cards += Math.min(FIRST, findings.length);
  }
  return before;
}

export function FindingGroups({ open }: { readonly open: OpenPlan }): JSX.Element {
  const store = useStore();
  const { grouping, placed, sought } = store;
  const groups = groupsOf(open, placed.value, grouping.value);
  const before = cardsBefore(groups);
  const finding = sought.value?.finding;
  const home = finding === undefined ? undefined : groups.find((group) => group.findings.includes(finding));
  useEffect(() => {
    if (home === undefined) return undefined;
    fold(store, `${grouping.value} ${home.key}`, false);
    const frame = requestAnimationFrame(() => {
      const card = document.querySelector<HTMLElement>('.finding-sought');
      card?.scrollIntoView({ block: 'center' });
      card?.focus({ preventScroll: true });
    });
    return () => cancelAnimationFrame(frame);
  }, [sought.value]);
  return (
    <>
      {groups.map((group, at) => (
        <Group key={`${grouping.value} ${group.key}`} group={group} open={open} at={at} before={before[at] ?? 0} />
      ))}
    </>
  );
}
