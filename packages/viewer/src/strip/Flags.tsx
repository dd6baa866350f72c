/** What the checks have found along the course, each mark in the shape of its severity; pressing one goes to its finding. One stop of Tab: arrow keys go from mark to mark. */
import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { SHAPES } from '../panels/ui/SeverityMark.tsx';
import { useStore, type OpenPlan, type Store } from '../state/store/store.ts';
import { seekFinding } from '../state/view/choose.ts';
import { countsOf, isOpen, waivedOf } from '../state/view/derive.ts';
import { reviewList } from '../state/view/placed.ts';
import { matterOf, subjectIn } from '../state/view/voice.ts';
import { counted, countWords, SEVERITY_WORD, waivedWords } from '../words.ts';
import { stripFlags, type StripFlag } from './flags.ts';
import { FLAGS_Y } from './frame.ts';
import type { StripPass, StripScale } from './geometry.ts';

/** Pixels between marks, and as many findings as a title names. */
const GAP = 16;
const NAMED = 3;

interface Props {
  readonly course: string;
  readonly open: OpenPlan;
  readonly passes: readonly StripPass[];
  readonly scale: StripScale;
}

/** "Error, 2 · Stennick Chapel: The sign is 70 m …"; of several how many, then each on a line of its own. */
function titleOf(store: Store, open: OpenPlan, { findings }: StripFlag): string {
  const [first] = findings;
  const about = (finding: (typeof findings)[number]): string => {
    const subject = subjectIn(open)(finding);
    return `${subject === '' ? '' : `${subject}: `}${matterOf(store, finding)}`;
  };
  if (findings.length === 1 && first !== undefined) {
    const word = isOpen(first) ? SEVERITY_WORD[first.severity] : 'Waived error';
    return `${word}, ${about(first)}`;
  }
  const words = [countWords(countsOf(findings)), waivedWords(waivedOf(findings))].filter((part) => part !== '');
  const left = findings.length - NAMED;
  return [
    `${counted(findings.length, 'finding')} (${words.join(', ')})`,
    ...findings.slice(0, NAMED).map(about),
    ...(left > 0 ? [`and ${left} more`] : []),
  ].join('\n');
}

export function Flags({ course, open, passes, scale }: Props): JSX.Element | null {
  const store = useStore();
  const group = useRef<SVGGElement>(null);
  const [stop, setStop] = useState(0);
  const flags = stripFlags(reviewList(open, store.placed.value), course, passes, scale, GAP);
  if (flags.length === 0) return null;
  const at = Math.min(stop, flags.length - 1);
  const press = (event: KeyboardEvent, index: number, flag: StripFlag): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    const go = event.key === 'Enter' || event.key === ' ';
    if ((step === 0 && !go) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (go) return seekFinding(store, flag.findings[0]!);
    const next = Math.min(Math.max(index + step, 0), flags.length - 1);
    setStop(next);
    group.current?.querySelectorAll<SVGElement>('.strip-flag')[next]?.focus();
  };
  return (
    <g ref={group} class="strip-flags" role="group" aria-label="Findings along the course">
      {flags.map((flag, index) => {
        const title = titleOf(store, open, flag);
        return (
          <g
            key={index}
            class={`strip-flag mark-${flag.severity}`}
            transform={`translate(${flag.x.toFixed(1)} ${FLAGS_Y})`}
            role="button"
            tabindex={index === at ? 0 : -1}
            aria-label={title}
            onClick={() => seekFinding(store, flag.findings[0]!)}
            onFocus={() => setStop(index)}
            onKeyDown={(event) => press(event, index, flag)}
          >
            <title>{title}</title>
            <rect class="strip-flag-ground" x={-8} y={-8} width={flag.waived ? 16 + GAP : 16} height={16} />
            <g transform="translate(-7 -7)">{SHAPES[flag.severity]}</g>
            {flag.waived ? (
              <g class="mark-waived" transform={`translate(${GAP - 7} -7)`}>
                {SHAPES.waived}
              </g>
            ) : null}
          </g>
        );
      })}
    </g>
  );
}
