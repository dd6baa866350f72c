/** Checks that nothing of a station stands on a kind of thing that the map has on the course. */
import type { Feature, FeatureKind } from '../ground/along.ts';
import type { StationLayout } from '../layout/layout.ts';
import type { OnStretch } from '../text/params/reviewGround.ts';
import { type Span, alongOf, casesOf, dayOfMap, noMap, reachInto, spansOf } from './byMap.ts';
import { type Case, type Check, type Ground, type ReviewCode, type RuleOf, stationCheck } from './check.ts';

/** What is looked for: features of these kinds, with `room` metres on either side; `counts`: whether one is in the way of what stands there. */
export interface Sought<C extends ReviewCode> {
  readonly kinds: readonly FeatureKind[];
  readonly room?: number;
  readonly counts?: (feature: Feature, span: Span, ground: Ground) => boolean;
  readonly params: (shared: OnStretch, feature: Feature) => Case<C>['params'];
}

export const onFeature = <C extends ReviewCode>(rule: Omit<RuleOf<C>, 'missing'>, sought: Sought<C>): Check =>
  stationCheck<C>({ ...rule, missing: noMap }, (station, ground) => foundAt(station, ground, sought));

function foundAt<C extends ReviewCode>(
  station: StationLayout,
  ground: Ground,
  { kinds, room = 0, counts = () => true, params }: Sought<C>,
): Case<C>[] {
  if (ground.ground === undefined) return [];
  const map = dayOfMap(ground.ground);
  const met = spansOf(station).flatMap((span) =>
    (alongOf(ground, span.direction)?.features ?? []).flatMap((feature) => {
      if (!kinds.includes(feature.kind)) return [];
      const by = reachInto(span, { from: feature.from - room, to: feature.to + room });
      return by > 0 && counts(feature, span, ground) ? [{ span, thing: feature, id: feature.id, by }] : [];
    }),
  );
  return casesOf<C, Feature>(met, station, ({ thing, by }, items) => ({
    params: params({ map, items, name: thing.name, overlap: by }, thing),
    measured: by,
    limit: 0,
    unit: 'm',
  }));
}
