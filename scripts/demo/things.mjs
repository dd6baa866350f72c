// Single things of the street map, by measure along the full course: crossings, signals and bollards on nodes of the
// ways, bus stops and hydrants beside the road. None stands where a station's things do.
import { add, between, lengthOf, sub } from './frame.mjs';

// Kilometres along the full course.
const onRoad = [
  [0.035, { highway: 'crossing', crossing: 'uncontrolled' }],
  [0.303, { highway: 'crossing', crossing: 'zebra' }],
  [7.343, { highway: 'crossing', crossing: 'uncontrolled' }],
  [38.658, { highway: 'crossing', crossing: 'zebra' }],
  [39.158, { highway: 'traffic_signals' }],
  [39.778, { highway: 'crossing', crossing: 'zebra' }],
];
// And metres from its line, left positive.
const beside = [
  [0.24, 5, { highway: 'bus_stop', name: 'Market Hall' }],
  [3.61, -5.5, { highway: 'bus_stop', name: 'The Strand' }],
  [9.3, 5.5, { highway: 'bus_stop', name: 'Quarry Lane End' }],
  [15.2, 5.5, { highway: 'bus_stop', name: 'Norra Hill' }],
  [30.1, -6, { highway: 'bus_stop', name: 'Tidewaiters’ Green' }],
  [38.7, -5.5, { highway: 'bus_stop', name: 'Custom House' }],
  ...[0.11, 0.4, 0.7, 2.2, 7.3, 16.3, 20.6, 30.25, 38.45, 38.85, 39.25, 39.55, 39.95].map((km, k) => [
    km,
    k % 2 === 0 ? -5 : 5,
    { emergency: 'fire_hydrant', 'fire_hydrant:type': 'pillar' },
  ]),
];

/** The place at a measure (kilometres) along a line, moved square to it (metres, left positive). */
function placeAt(line, km, offset = 0) {
  let left = km;
  for (let i = 1; i < line.length; i += 1) {
    const d = sub(line[i], line[i - 1]);
    const leg = lengthOf(d);
    if (left > leg && i < line.length - 1) {
      left -= leg;
      continue;
    }
    return add(add(line[i - 1], d, left / leg), [-d[1] / leg, d[0] / leg], offset / 1000);
  }
  throw new Error('placeAt: a line needs two points');
}

/** All of them: { at, tags, of }; `of` is the vertex of the way that one is a node of. */
export function things(pieces, full) {
  const roads = pieces.filter(({ tags }) => tags.highway);
  const vertices = roads.flatMap(({ points }) => points);
  const rails = new Set(pieces.filter(({ tags }) => tags.railway).flatMap(({ points }) => points));
  const nearest = (at) => vertices.reduce((a, b) => (between(b, at) < between(a, at) ? b : a));
  const level = [...new Set(vertices.filter((p) => rails.has(p)))];
  return [
    ...level.map((of) => ({ at: of, of, tags: { railway: 'level_crossing' } })),
    ...onRoad.map(([km, tags]) => {
      const of = nearest(placeAt(full, km));
      return { at: of, of, tags };
    }),
    ...beside.map(([km, offset, tags]) => ({ at: placeAt(full, km, offset), tags })),
  ];
}
