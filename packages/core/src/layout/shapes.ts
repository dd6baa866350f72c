/** The shapes of a layout. */
import { isPlanGround } from '../ground/planGround.ts';
import { isIndexed } from '../course/indexedShape.ts';
import { isItemKind, isWholePlan } from '../plan/shapes.ts';
import { DIRECTION_SHAPES, SEEN_SHAPES, directionsFit, isRaceSpacing } from '../station/shapes.ts';
import {
  type Shape,
  type Shapes,
  aText,
  finite,
  listOf,
  maybe,
  notNegative,
  oneOf,
  orNull,
  position,
  recordOf,
  remembered,
  tuple,
} from '../wants.ts';
import type { StreetPlace } from '../ground/along.ts';
import type { Item, LaidDirection, Layout, StationLayout, ToldPlace } from './layout.ts';

const STREET: Shapes<StreetPlace> = { street: orNull(aText), after: orNull(aText), before: orNull(aText) };

const isItem: Shape = recordOf<Item>('an item', {
  kind: isItemKind,
  from: finite,
  to: finite,
  along: tuple(finite, finite),
  wheel: orNull(tuple(finite, finite)),
  wheelMargin: finite,
  side: oneOf('left', 'right', 'unclear'),
  at: tuple(orNull(position), orNull(position)),
  offset: finite,
  wording: maybe(aText),
  boxes: maybe(listOf(recordOf('a box', { measure: finite, at: orNull(position) }))),
  byHand: maybe(oneOf(true)),
  street: maybe(recordOf<StreetPlace>('a place by its street', STREET)),
});

const isLaid: Shape = recordOf<LaidDirection>('a direction', { ...DIRECTION_SHAPES, items: listOf(isItem) });

const isNeeds: Shape = recordOf('needs of race day', {
  tables: recordOf('tables', { gel: notNegative, sportsDrink: notNegative, water: notNegative }),
  crew: recordOf('a crew', { handOut: notNegative }),
});

export const isStationLayout: Shape = remembered(
  directionsFit(
    recordOf<StationLayout>('a station of the layout', {
      ...SEEN_SHAPES,
      directions: listOf(isLaid),
      number: maybe(finite),
      needs: maybe(isNeeds),
      street: maybe(recordOf<ToldPlace>('a place by its street', { ...STREET, by: oneOf('plan', 'map') })),
    }),
  ),
);

export const LAYOUT_SHAPES: Shapes<Layout> = {
  plan: isWholePlan,
  courses: listOf(isIndexed),
  stations: listOf(isStationLayout),
  spacing: listOf(isRaceSpacing),
  ground: maybe(isPlanGround),
};

/** What a layout names is in it: courses of races, passes and directions; stations of the plan at their index. */
export const fits =
  (shape: Shape): Shape =>
  (value) => {
    const found = shape(value);
    if (found !== null) return found;
    const { plan, courses, stations, spacing } = value as Layout;
    const isCourseId = oneOf(...courses.map(({ course }) => course.id));
    const isRaceId = oneOf(...plan.races.map(({ id }) => id));
    const named: [string, Shape, unknown][] = [
      ...plan.courses.map((course, k): [string, Shape, unknown] => [`plan.courses[${k}].id`, isCourseId, course.id]),
      ...spacing.flatMap(({ race, course }, k): [string, Shape, unknown][] => [
        [`spacing[${k}].race`, isRaceId, race],
        [`spacing[${k}].course`, isCourseId, course],
      ]),
      ...stations.flatMap(({ index, passes, directions }, k): [string, Shape, unknown][] => [
        [`stations[${k}].index`, oneOf(k), index],
        ...[...passes, ...directions].flatMap(({ race, course }): [string, Shape, unknown][] => [
          [`stations[${k}] names a race`, isRaceId, race],
          [`stations[${k}] names a course`, isCourseId, course],
        ]),
      ]),
    ];
    for (const [path, known, id] of named) {
      const missing = known(id);
      if (missing !== null) return { ...missing, path };
    }
    return null;
  };

export const isLayout: Shape = remembered(
  fits(recordOf('the layout that layoutStage or analyse gives', LAYOUT_SHAPES)),
);
