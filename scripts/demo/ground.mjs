// The island as a street map has it, cut to what lies near the courses: ways with tags in the words of OpenStreetMap and
// with the nodes that they share, buildings, water and parks, and single things beside the road. Invented like the island.
import { between, toLine, toLonLat } from './frame.mjs';
import { area } from './contour.mjs';
import { sample } from './curve.mjs';
import { deckOf, lighthouse, ponds } from './context.mjs';
import { harbour, tideGap } from './land.mjs';
import { courses, coursePoints, town } from './roads.mjs';
import { noded } from './streets.mjs';
import { things } from './things.mjs';

/** How far from a course the map reaches, kilometres. */
const near = 0.3;
const credit = { attribution: 'Invented for Halfcup', licence: 'CC0 1.0', date: '2027-06-01' };

const classes = {
  main: { highway: 'secondary', lanes: '2', surface: 'asphalt' },
  street: { highway: 'residential', surface: 'asphalt' },
  lane: { highway: 'unclassified' },
  path: { highway: 'path' },
  pier: { highway: 'pedestrian', man_made: 'pier' },
};
// The map knows a width only here and there, as maps do, metres.
const widths = {
  west: '9',
  valley: '9',
  north: '8',
  zigzag: '9',
  lightPath: '4.5',
  southEast: '10',
  ring: '9',
  pier: '8',
};

const railway = {
  name: 'Tarn Railway',
  tags: { railway: 'narrow_gauge', gauge: '600' },
  points: sample(
    [
      [-2.86, 0.26],
      [-3.1, 0.08],
      [-3.5, 0.06],
      [-3.8, 0.13],
      [-4.0, 0.15],
    ].map((at) => ({ at })),
  ),
};
const steps = {
  name: 'Ferry Steps',
  tags: { highway: 'steps', step_count: '14' },
  points: [town(0.2, 0), town(0.2, -0.02)],
};

/** A street with the tags of its class, name and width. */
const tagged = ({ id, kind, name, points }) => ({
  points,
  tags: {
    ...classes[kind],
    ...(name && { name }),
    ...(widths[id] && { width: widths[id] }),
  },
});

/** A way cut where it goes onto and off a bridge. */
function bridged(way, onDeck) {
  const cuts = way.points.flatMap((p, i, all) =>
    i > 0 && i < all.length - 1 && onDeck(all[i - 1], p) !== onDeck(p, all[i + 1]) ? [i] : [],
  );
  return [0, ...cuts].map((from, k) => {
    const points = way.points.slice(from, (cuts[k] ?? way.points.length - 1) + 1);
    return onDeck(points[0], points[1])
      ? { points, tags: { ...way.tags, bridge: 'yes', layer: '1' } }
      : { ...way, points };
  });
}

function waysOf(net, { roads, landOf }) {
  const lines = noded([...roads, railway, steps], net.size);
  const deck = new Set(deckOf(net.get('bridge').points, landOf).map(String));
  const overGap = (p, q) => toLine(tideGap, [p, q]) < 0.052;
  return lines.flatMap((road) => {
    if (road.tags) return [{ points: road.points, tags: { ...road.tags, name: road.name } }];
    const way = tagged(road);
    if (road.id === 'bridge') return bridged(way, (p, q) => deck.has(String(p)) && deck.has(String(q)));
    return road.id === 'causeway' ? bridged(way, overGap) : [way];
  });
}

/** The pieces of a line near a course, each with one vertex beyond at either end. */
function clipped(points, isNear) {
  const kept = points.map((p, i) => isNear(p) || isNear(points[i - 1] ?? p) || isNear(points[i + 1] ?? p));
  const pieces = [[]];
  for (const [i, p] of points.entries()) {
    if (kept[i]) pieces.at(-1).push(p);
    else if (pieces.at(-1).length > 0) pieces.push([]);
  }
  return pieces.filter((piece) => piece.length > 1);
}

const middle = (ring) => [(ring[0][0] + ring[2][0]) / 2, (ring[0][1] + ring[2][1]) / 2];
const closed = (ring) => [...ring, ring[0]];
/** Counterclockwise, as GeoJSON wants outer rings (RFC 7946). */
const turned = (ring) => (area(ring) > 0 ? ring : ring.toReversed());

/** What the larger and the better known of the houses are. */
const known = [
  [town(0.165, 0.38), { building: 'yes', amenity: 'fire_station', name: 'Port Ullen Fire Station' }],
  [town(-0.217, 0.385), { building: 'hospital', amenity: 'hospital', name: 'Port Ullen Hospital' }],
  [town(0.485, 0.366), { building: 'school', amenity: 'school', name: 'Market Street School' }],
  [town(0.313, 0.348), { building: 'church', amenity: 'place_of_worship' }],
  [town(0.65, 0.06), { building: 'warehouse' }],
  [town(0.895, 0.062), { building: 'warehouse' }],
];

function areasOf(net, { houses, isNear, ways }) {
  const railways = ways.filter(({ tags }) => tags.railway).map(({ points }) => points);
  const standing = houses.filter(
    (house) => isNear(middle(house)) && railways.every((line) => toLine(middle(house), line) > 0.02),
  );
  const special = new Map(
    known.map(([at, tags]) => [
      standing.reduce((a, b) => (between(middle(b), at) < between(middle(a), at) ? b : a)),
      tags,
    ]),
  );
  return [
    { ring: net.get('ring').points, tags: { leisure: 'park', name: 'Quillet Park' } },
    ...ponds.map(({ name, shore }) => ({ ring: shore, tags: { natural: 'water', water: 'pond', name } })),
    { ring: closed(harbour.basin), tags: { natural: 'water', water: 'harbour', name: 'Harbour' } },
    ...standing.map((house) => ({ ring: closed(house), tags: special.get(house) ?? { building: 'yes' } })),
    {
      ring: lighthouse(net),
      tags: { building: 'yes', man_made: 'lighthouse', name: 'Ganneth Light' },
    },
  ].filter(({ ring }) => ring.some(isNear));
}

const sorted = (tags) => Object.fromEntries(Object.entries(tags).toSorted(([a], [b]) => (a < b ? -1 : 1)));

/** The text of the street map, as Halfcup itself writes one: one feature to a line, in the order ways, areas, single things. */
export function groundText(net, land) {
  const lines = Object.keys(courses).map((course) => coursePoints(net, course));
  // No step of a course is over 80 m, so that a look at its vertices leaves out most.
  const about = near + 0.04;
  const isNear = ([x, y]) =>
    lines.some(
      (line) =>
        line.some((v) => Math.abs(v[0] - x) < about && Math.abs(v[1] - y) < about) && toLine([x, y], line) < near,
    );
  const ways = waysOf(net, land);
  const nodes = new Map();
  const node = (p) => {
    const key = String(toLonLat(p));
    if (!nodes.has(key)) nodes.set(key, nodes.size + 1);
    return nodes.get(key);
  };
  const pieces = ways.flatMap((way, k) => clipped(way.points, isNear).map((points) => ({ ...way, k, points })));
  const features = [
    ...pieces.map(({ k, points, tags }) => ({
      type: 'Feature',
      id: `way/${k + 1}`,
      nodes: points.map(node),
      properties: sorted(tags),
      geometry: { type: 'LineString', coordinates: points.map((p) => toLonLat(p)) },
    })),
    ...areasOf(net, { ...land, isNear, ways }).map(({ ring, tags }, k) => ({
      type: 'Feature',
      id: `way/${1001 + k}`,
      properties: sorted(tags),
      geometry: { type: 'Polygon', coordinates: [turned(ring).map((p) => toLonLat(p, 6))] },
    })),
    ...things(pieces, coursePoints(net, 'full')).map(({ at, tags, of }, k) => ({
      type: 'Feature',
      id: `node/${of ? node(of) : 10_001 + k}`,
      properties: sorted(tags),
      geometry: { type: 'Point', coordinates: toLonLat(at) },
    })),
  ];
  const head = Object.entries(credit).map(([key, value]) => `"${key}": ${JSON.stringify(value)},\n`);
  return `{\n"type": "FeatureCollection",\n${head.join('')}"features": [\n${features.map((f) => JSON.stringify(f)).join(',\n')}\n]\n}\n`;
}
