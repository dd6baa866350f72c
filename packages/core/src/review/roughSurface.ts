/** Cobbles, gravel, grass on a course, by the map: a note, an error where wheels race. */
import type { SurfaceStretch } from '../ground/along.ts';
import { dayOfMap, noMap } from './byMap.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { ofCourse, onWheels } from './onCourse.ts';

/** Values of OpenStreetMap's `surface` on which one stumbles. */
const UNEVEN = [
  'cobblestone',
  'unhewn_cobblestone',
  'sett',
  'pebblestone',
  'grass_paver',
  'stepping_stones',
  'gravel',
  'grass',
  'sand',
  'mud',
  'rock',
  'ground',
  'dirt',
  'earth',
  'woodchips',
];
/** Those on which wheels stick or slide besides. */
const SOFT = ['unpaved', 'fine_gravel', 'compacted', 'wood', 'metal'];
/** So many metres are no stretch: a kerb, a crossing. */
const SHORTEST = 10;

export const roughSurface: Check = check(
  { code: 'rough-surface', severity: 'note', source: COMMON_PRACTICE, missing: noMap },
  (layout) =>
    layout.courses.flatMap(({ course: { id } }) => {
      const races = onWheels(layout, id).map((race) => race.id);
      const rough = new Set(races.length > 0 ? [...UNEVEN, ...SOFT] : UNEVEN);
      const stretches = joined(layout.ground?.along.get(id)?.surfaces ?? []).filter(
        ({ surface, from, to }) => rough.has(surface) && to - from >= SHORTEST,
      );
      if (stretches.length === 0) return [];
      const length = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
      return [
        {
          params: {
            map: dayOfMap(layout.ground!),
            course: id,
            races,
            stretches: stretches.map(({ from, to, surface }) => ({ from, to, surface })),
          },
          where: { ...ofCourse(layout, id), measure: stretches[0]!.from },
          ...(races.length > 0 ? { severity: 'error' as const } : {}),
          measured: length,
          limit: 0,
          unit: 'm' as const,
        },
      ];
    }),
);

/** Stretches of one surface that meet are one. */
function joined(stretches: readonly SurfaceStretch[]): SurfaceStretch[] {
  const all: SurfaceStretch[] = [];
  for (const one of stretches) {
    const last = all.at(-1);
    if (last !== undefined && last.surface === one.surface && one.from - last.to < 1)
      all[all.length - 1] = { ...last, to: one.to };
    else all.push(one);
  }
  return all;
}
