/** The shapes of a review and of a whole analysis. */
import { isFinding } from '../finding.ts';
import { LAYOUT_SHAPES, fits } from '../layout/shapes.ts';
import { isRaceDay } from '../raceday/shapes.ts';
import {
  type Shape,
  aFlag,
  aText,
  finite,
  listOf,
  maybe,
  oneOf,
  orNull,
  recordOf,
  position,
  remembered,
  tableOf,
  tuple,
} from '../wants.ts';
import type { CheckRun } from './review.ts';
import { THEMES } from './themes.ts';
import { isItemKind } from '../plan/shapes.ts';
import type { PlacedStation } from './placedStation.ts';
import type { PlacedVerdict } from './placedVerdict.ts';

export const isCheckRun: Shape = recordOf<CheckRun>('a check', {
  code: aText,
  severity: oneOf('error', 'warning', 'note'),
  title: aText,
  theme: oneOf(...THEMES),
  source: aText,
  ran: aFlag,
  reason: maybe(aText),
  reasonCode: maybe(aText),
  found: finite,
  cannotTell: finite,
});

export const isVerdict: Shape = recordOf<PlacedVerdict>('a verdict of reviewPlaced', {
  station: aText,
  item: isItemKind,
  end: maybe(oneOf('from', 'to')),
  course: aText,
  verdict: oneOf('holds', 'fails', 'cannot tell'),
  measured: finite,
  limit: tuple(finite, finite),
  margin: finite,
  move: finite,
  at: position,
  by: oneOf('position', 'wheel'),
  reference: oneOf('placed', 'planned'),
  side: oneOf('left', 'right', 'unclear'),
  confidence: finite,
});

export const isPlacedStation: Shape = recordOf<PlacedStation>('a station of reviewBuilt', {
  station: aText,
  course: aText,
  item: isItemKind,
  planned: position,
  recorded: position,
  distance: finite,
  margin: finite,
  limit: finite,
  verdict: oneOf('holds', 'fails', 'cannot tell'),
  along: orNull(finite),
  measures: tuple(finite, orNull(finite)),
});

export const isStationFound: Shape = tableOf(listOf(isFinding));

export const isAnalysis: Shape = remembered(
  fits(
    recordOf('the analysis that analyse gives', {
      ...LAYOUT_SHAPES,
      day: orNull(isRaceDay),
      findings: listOf(isFinding),
      checks: listOf(isCheckRun),
    }),
  ),
);
