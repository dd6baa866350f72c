/** The shapes of what improving and comparing come to. */
import { isFinding } from '../finding.ts';
import { isItemKind, isWholePlan } from '../plan/shapes.ts';
import { isAnalysis } from '../review/shapes.ts';
import {
  type Shape,
  aFlag,
  aText,
  anything,
  either,
  finite,
  listOf,
  oneOf,
  orNull,
  position,
  recordOf,
  tuple,
} from '../wants.ts';
import type { Comparison } from './compare.ts';
import type { Improvement } from './improve.ts';
import type { Standing } from './standing.ts';
import type { Move } from './verify.ts';

const isStanding: Shape = recordOf<Standing>('how a plan stands', {
  error: finite,
  warning: finite,
  note: finite,
  waived: finite,
  idle: finite,
  longest: listOf(recordOf('a leg', { race: aText, from: aText, to: aText, length: finite })),
});

export const isMove: Shape = recordOf<Move>('a move that improve gives', {
  station: aText,
  name: aText,
  from: position,
  to: position,
  measure: finite,
  course: aText,
  shift: finite,
  moved: finite,
  dropped: listOf(isItemKind),
  walked: aFlag,
});

const isBound: Shape = recordOf('a bound', {
  bound: recordOf('a bound', { error: finite, warning: finite, longest: finite }),
});

export const isImprovement: Shape = recordOf<Improvement>('what improve gives', {
  before: isStanding,
  after: isStanding,
  moves: listOf(isMove),
  proof: either(oneOf('optimal'), isBound),
  plan: isWholePlan,
  analysis: isAnalysis,
  tried: finite,
  step: finite,
  stepBeyond: finite,
  stays: listOf(recordOf('a station that stays', { station: aText, why: aText })),
  stopped: anything,
});

const change = (shape: Shape): Shape => tuple(shape, shape);
const numbers: Shape = change(finite);
const some: Shape = change(orNull(finite));
const isChangedLeg: Shape = recordOf('a leg', { from: aText, to: aText, length: some });

export const isComparison: Shape = recordOf<Comparison>('what compareAnalyses gives', {
  variants: change(aText),
  stations: listOf(recordOf('a station', { id: aText, name: aText, moved: finite, from: position, to: position })),
  spacing: listOf(
    recordOf('spacing', {
      race: aText,
      legs: listOf(isChangedLeg),
      longest: numbers,
      shortest: numbers,
      mean: numbers,
    }),
  ),
  items: listOf(
    recordOf('an item', {
      station: aText,
      item: isItemKind,
      lead: aFlag,
      race: aText,
      along: some,
      wheel: some,
      alongEnd: some,
      wheelEnd: some,
      side: change(orNull(oneOf('left', 'right', 'unclear'))),
    }),
  ),
  findings: recordOf('findings', { gained: listOf(isFinding), lost: listOf(isFinding) }),
});
