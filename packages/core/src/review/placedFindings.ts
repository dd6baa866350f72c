/** What is said of verdicts: things that stand wrong, errors too large to tell, wheel readings that cannot be used or do not agree. */
import { sigmaOf } from '../course/passes.ts';
import type { Finding, Where } from '../finding.ts';
import type { StationLayout } from '../layout/layout.ts';
import { itemWord } from '../station/wording.ts';
import { COMMON_PRACTICE, metres, named } from './check.ts';
import { GUARD } from './placedGround.ts';
import type { Judged } from './placedVerdict.ts';

/** Two-sided 95 % of a normal error, in σ. */
const TWO_SIDED = 1.96;

/** Findings on one verdict, in the order in which they are to be mended. */
export function verdictFindings(judged: Judged, station: StationLayout): Finding[] {
  const { point, verdict } = judged;
  const where: Where = { ...point.where, station: station.id, course: verdict.course, item: verdict.item };
  return [
    ...distance(judged, station, where),
    ...wheelUse(judged, station, where),
    ...wheelNeeded(judged, station, where),
  ];
}

const thing = ({ verdict: { item, end } }: Judged, station: StationLayout): string =>
  `${itemWord(item)}${end === undefined ? '' : end === 'from' ? ' (its beginning)' : ' (its end)'} of ${named(station)}`;

const reference = ({ verdict }: Judged): string =>
  verdict.item === 'sign' ? 'before the first table' : 'after the last table';

function distance(judged: Judged, station: StationLayout, where: Where): Finding[] {
  const { item, verdict, measured, limit, margin, move } = judged.verdict;
  if (verdict === 'holds') return [];
  const stands = `${thing(judged, station)} stands ${metres(measured)} (± ${metres(margin)}) ${reference(judged)}; expected ${metres(limit[0])} to ${metres(limit[1])}.`;
  const told = { where, measured, limit, unit: 'm', source: COMMON_PRACTICE };
  if (verdict === 'cannot tell') {
    return [
      {
        code: 'placed-distance',
        severity: 'note',
        message: `${stands} Its error does not allow an answer: wheel it, or record it again.`,
        ...told,
        cannotTell: true,
      },
    ];
  }
  const message = `${stands} Move it ${metres(Math.abs(move))} ${move > 0 ? 'downstream' : 'upstream'}.`;
  return [{ code: 'placed-distance', severity: item === 'sign' ? 'error' : 'warning', message, ...told }];
}

function wheelUse(judged: Judged, station: StationLayout, where: Where): Finding[] {
  const { wheeled, verdict, byPosition } = judged;
  if (wheeled === null) return [];
  if ('unread' in wheeled) {
    const message = `${judged.point.label} says "wheel ${wheeled.unread}"; expected one length with its unit, such as "wheel 98 yd" or "wheel 89.6 m". The position is used instead.`;
    return [{ code: 'placed-wheel-unread', severity: 'warning', message, where }];
  }
  if (verdict.by === 'position') {
    const message = `${thing(judged, station)} was wheeled, but the plan has no wheel distance there (its line along the kerb folds), so the reading cannot be held against course distance. The position is used instead.`;
    return [{ code: 'placed-wheel-unused', severity: 'warning', message, where }];
  }
  const apart = Math.abs(verdict.measured - byPosition.measured);
  if (apart <= (byPosition.margin * TWO_SIDED) / GUARD + verdict.margin) return [];
  const message = `${thing(judged, station)}: the wheel says ${metres(verdict.measured)} of course distance ${reference(judged)}, the positions ${metres(byPosition.measured)} (± ${metres(byPosition.margin)}). The wheel is used; look where it was wheeled to.`;
  return [{ code: 'placed-wheel-differs', severity: 'warning', message, where, measured: verdict.measured, unit: 'm' }];
}

/** Where the error is larger than the tolerance no placement can hold. */
function wheelNeeded(judged: Judged, station: StationLayout, where: Where): Finding[] {
  const { limit, margin, by, item } = judged.verdict;
  const tolerance = (limit[1] - limit[0]) / 2;
  if (margin <= tolerance) return [];
  const what = by === 'wheel' ? 'wheel’s' : 'positions’';
  const how = item === 'sign' ? 'Wheel from the sign to the first table' : 'Wheel from the end of the last table to it';
  const message = `${thing(judged, station)}: the ${what} error alone (± ${metres(margin)}) is larger than the tolerance of ${metres(tolerance)}, so nothing can hold here. ${how} and note it in the point's comment, such as "wheel 98 yd"${by === 'wheel' ? '; check the distance on the ground with a tape' : ''}.`;
  return [
    { code: 'placed-wheel-needed', severity: 'warning', message, where, measured: margin, limit: tolerance, unit: 'm' },
  ];
}

/** Which assumptions all of this rests on, as one note. */
export function assumptions(file: string, pinR95: number): Finding {
  const sigma = sigmaOf({ pinR95, courseR95: pinR95 });
  const message =
    'Assumed of recorded points: a 95 % radius of 5 m × hdop, or of ' +
    `${pinR95} m (pinR95) without hdop and for places known from the plan only (two of these: ± ${metres(GUARD * sigma)} at 95 %, one-sided); of a wheel 0.1 % and 0.5 m. ` +
    'One point at a table marks its upstream end. Trash is held to the tolerance of the sign, since the practice has none of its own.';
  return { code: 'placed-assumptions', severity: 'note', message, where: { file }, source: 'assumption' };
}
