/** How far a station stands from where it was, in the words that are written beside it. Pure. */
import type { StationLayout } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { segmentLength } from '@halfcup/core/geometry';
import { lengthText, sideWords } from '../../words.ts';
import { leadOf, signDistance } from './derive.ts';

export interface Difference {
  /** Metres along the lead direction's course, downstream positive; `null` where the two do not stand on one course. */
  readonly along: number | null;
  /** Metres over the ground. */
  readonly moved: number;
  /** The side on which it stands now, where that is another. */
  readonly side: 'left' | 'right' | 'unclear' | null;
  /** From the sign to the first table along the course, before and now, metres; `null` where it is the same or there is none. */
  readonly sign: readonly [number, number] | null;
}

export function differenceOf(from: StationLayout, to: StationLayout): Difference {
  const [before, now] = [leadOf(from), leadOf(to)];
  const [signBefore, signNow] = [
    before === undefined ? null : signDistance(before),
    now === undefined ? null : signDistance(now),
  ];
  return {
    along:
      before === undefined || now === undefined || before.course !== now.course ? null : now.measure - before.measure,
    moved: segmentLength(from.at[0], from.at[1], to.at[0], to.at[1]),
    side: now === undefined || before?.side === now.side ? null : now.side,
    sign:
      signBefore === null || signNow === null || Math.abs(signBefore.along - signNow.along) < 0.5
        ? null
        : [signBefore.along, signNow.along],
  };
}

/** "+35 m along the course, to the left-hand side, sign 74 m → 91 m". */
export function differenceText({ along, moved, side, sign }: Difference, units: Units): string {
  const text = along === null ? '' : lengthText(along, units);
  const parts = [
    along === null
      ? `${lengthText(moved, units)} from where it was`
      : `${along >= 0 && !text.startsWith('0 ') ? '+' : ''}${text} along the course`,
    side === null ? '' : side === 'unclear' ? sideWords(side) : `to the ${sideWords(side)}`,
    sign === null ? '' : `sign ${lengthText(sign[0], units)} → ${lengthText(sign[1], units)}`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}
