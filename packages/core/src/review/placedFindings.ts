/** What is said of verdicts: things that stand wrong, errors too large to tell, wheel readings that cannot be used or do not agree. */
import { sigmaOf } from '../course/passes.ts';
import type { Finding, Where } from '../finding.ts';
import type { StationLayout } from '../layout/layout.ts';
import type { PlacedParams } from '../text/params/placed.ts';
import { COMMON_PRACTICE } from './check.ts';
import { GUARD } from './placedGround.ts';
import { R95_PER_HDOP, makePlaced } from './placedPoint.ts';
import type { Judged } from './placedVerdict.ts';
import { WHEEL_FIXED, WHEEL_SHARE } from './placedWheel.ts';

/** Two-sided 95 % of a normal error, in σ. */
const TWO_SIDED = 1.96;

/** Findings on one verdict, in the order in which they are to be put right. */
export function verdictFindings(judged: Judged, station: StationLayout): Finding[] {
  const { point, verdict } = judged;
  const where: Where = { ...point.where, station: station.id, course: verdict.course, item: verdict.item };
  return [...distance(judged, where), ...wheelUse(judged, where), ...wheelNeeded(judged, where)];
}

const thing = ({ verdict: { item, end } }: Judged): PlacedParams['placed-wheel-unused'] => ({ item, end: end ?? null });

function distance(judged: Judged, where: Where): Finding[] {
  const { item, verdict, measured, limit, margin, move } = judged.verdict;
  if (verdict === 'holds') return [];
  const told = { where, measured, limit, unit: 'm', source: COMMON_PRACTICE };
  const params = { ...thing(judged), measured, limit, margin, move };
  return verdict === 'cannot tell'
    ? [makePlaced('placed-distance', { ...params, move: null }, { severity: 'note', ...told, cannotTell: true })]
    : [makePlaced('placed-distance', params, { severity: item === 'sign' ? 'error' : 'warning', ...told })];
}

function wheelUse(judged: Judged, where: Where): Finding[] {
  const { wheeled, verdict, byPosition, point } = judged;
  if (wheeled === null) return [];
  const severity = 'warning';
  if ('unread' in wheeled) {
    const params = { point: point.waypoint.name, text: wheeled.unread };
    return [makePlaced('placed-wheel-unread', params, { severity, where })];
  }
  if (verdict.by === 'position') return [makePlaced('placed-wheel-unused', thing(judged), { severity, where })];
  const apart = Math.abs(verdict.measured - byPosition.measured);
  if (apart <= (byPosition.margin * TWO_SIDED) / GUARD + verdict.margin) return [];
  const { measured: positions, margin } = byPosition;
  const params = { ...thing(judged), wheel: verdict.measured, positions, margin };
  return [makePlaced('placed-wheel-differs', params, { severity, where, measured: verdict.measured, unit: 'm' })];
}

/** Where the error is larger than the tolerance no placement can hold. */
function wheelNeeded(judged: Judged, where: Where): Finding[] {
  const { limit, margin, by } = judged.verdict;
  const tolerance = (limit[1] - limit[0]) / 2;
  if (margin <= tolerance) return [];
  const facts = { severity: 'warning', where, measured: margin, limit: tolerance, unit: 'm' } as const;
  return [makePlaced('placed-wheel-needed', { ...thing(judged), by, margin, tolerance }, facts)];
}

/** Which assumptions all of this rests on, as one note. */
export function assumptions(file: string, pinR95: number): Finding {
  const between = GUARD * sigmaOf({ pinR95, courseR95: pinR95 });
  return makePlaced(
    'placed-assumptions',
    { perHdop: R95_PER_HDOP, r95: pinR95, between, wheelShare: WHEEL_SHARE, wheelFixed: WHEEL_FIXED },
    { severity: 'note', where: { file }, source: 'assumption' },
  );
}
