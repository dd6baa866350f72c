/** Where along one course findings are marked on the strip; those that would cover each other are one mark. Pure. */
import type { Finding, Severity } from '@halfcup/core';
import { isOpen, worstOf } from '../state/view/derive.ts';
import type { StripPass, StripScale } from './geometry.ts';

export interface StripFlag {
  readonly x: number;
  /** The gravest that is open; where none is, an error is waived. */
  readonly severity: Severity | 'waived';
  /** An error is waived beside it, and there is room for a second mark. */
  readonly waived: boolean;
  /** The gravest first. */
  readonly findings: readonly Finding[];
}

/** Course distance of a finding: its own, else that of its station's first served pass; `null` where it has none on this course. */
function measureOf({ where }: Finding, course: string, passes: readonly StripPass[]): number | null {
  if (where.measure !== undefined && where.course !== undefined) return where.course === course ? where.measure : null;
  if (where.station === undefined || (where.course !== undefined && where.course !== course)) return null;
  const own = passes.filter(({ id }) => id === where.station);
  return (own.find(({ served }) => served) ?? own[0])?.measure ?? null;
}

const RANK = { error: 0, warning: 1, note: 2 } as const;
const rank = (finding: Finding): number => RANK[finding.severity] + (isOpen(finding) ? 0 : 3);

/** Marks in view from left to right, at least `gap` pixels apart: open findings, and errors that are waived. */
export function stripFlags(
  findings: readonly Finding[],
  course: string,
  passes: readonly StripPass[],
  scale: StripScale,
  gap: number,
): readonly StripFlag[] {
  const [low = 0, high = 0] = scale.range();
  const placed = findings
    .filter((finding) => isOpen(finding) || finding.severity === 'error')
    .flatMap((finding) => {
      const measure = measureOf(finding, course, passes);
      const x = measure === null ? Number.NaN : scale(measure);
      return x >= low - 1 && x <= high + 1 ? [{ x, finding }] : [];
    })
    .toSorted((a, b) => a.x - b.x);
  const groups: { readonly x: number; readonly findings: Finding[] }[] = [];
  for (const { x, finding } of placed) {
    const last = groups.at(-1);
    if (last !== undefined && x - last.x < gap) last.findings.push(finding);
    else groups.push({ x, findings: [finding] });
  }
  return groups.map(({ x, findings: own }, index) => {
    const worst = worstOf(own);
    const room = (groups[index + 1]?.x ?? high + gap) - x >= 2 * gap;
    return {
      x,
      severity: worst ?? 'waived',
      waived: worst !== null && room && !own.every(isOpen),
      findings: own.toSorted((a, b) => rank(a) - rank(b)),
    };
  });
}
