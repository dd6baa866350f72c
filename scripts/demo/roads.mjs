// The road network of the island: control points in kilometres, sampled once, so that every course that
// uses a road uses the very same points. A node is a named control point.
import { sample } from './curve.mjs';
import { geodesicLength, toLonLat } from './frame.mjs';

const townTurn = (7 * Math.PI) / 180;
/** A point of the town's own grid (kilometres along and square to the quay) in the plane. */
export const town = (u, v) => [
  0.2 + u * Math.cos(townTurn) - v * Math.sin(townTurn),
  -3.62 + u * Math.sin(townTurn) + v * Math.cos(townTurn),
];

export const park = { centre: [2.06, -2.76], a: 0.33, b: 0.245 };
const onPark = (deg, k = 1) => {
  const t = (deg * Math.PI) / 180;
  return [park.centre[0] + park.a * k * Math.sin(t), park.centre[1] + park.b * k * Math.cos(t)];
};

const nodes = {
  start: town(0.0, 0.3),
  westGate: town(-0.82, 0.31),
  highTurn: town(0.55, 0.62),
  quayTurn: town(0.55, 0),
  finish: town(0.3, 0),
  pierRoot: town(1.05, 0),
  pierEnd: town(1.12, -0.58),
  parkN: onPark(0),
  parkE: onPark(90),
  parkS: onPark(180),
  parkW: onPark(270),
  stennick: [-3.66, 0.72],
  fork: [0.46, 0.52],
  southShore: [1.72, -1.18],
  norra: [-0.62, 4.3],
  lightFoot: [4.15, 3.92],
  light: [5.33, 4.12],
  bridgeN: [5.5, 0.98],
  bridgeS: [5.28, -0.72],
  mid: [-0.42, -1.12],
  head: [-0.55, 0.47],
};

// Two control points give way so that each race comes out at its length.
const roads = ({ half, full }) => [
  { id: 'market', kind: 'main', name: 'Market Street', line: [town(1.05, 0.3), 'start', 'westGate'] },
  {
    id: 'west',
    kind: 'main',
    name: 'Strand Road',
    line: [
      'westGate',
      [-1.2, -3.5],
      [-1.6, -3.38],
      [-1.95, -3.42],
      [-2.4, -3.2],
      [-2.7, -2.9],
      [-3.02, -2.76],
      [-3.32, -2.35],
      [-3.5, -2.02],
      [-3.8, -1.72],
      [-3.84, -1.3],
      [-4.02, -0.95],
      [-4.0, -0.55],
      [-3.84, -0.2],
      [-3.9, 0.15],
      [-3.8, 0.5],
      'stennick',
    ],
  },
  {
    id: 'valley',
    kind: 'main',
    name: 'Drover’s Road',
    line: [
      'stennick',
      [-3.3, 0.84],
      [-2.95, 1.02],
      [-2.6, 0.9],
      [-2.25, 0.68],
      [-1.9, 0.74],
      [-1.58, 0.9],
      [-1.25, 0.78],
      [-0.95, 0.54],
      'head',
      [-0.15, 0.5],
      'fork',
    ],
  },
  {
    id: 'causeway',
    kind: 'main',
    name: 'Wrack Causeway',
    line: ['fork', [0.72, 0.44], [0.94, 0.26], [1.36, -0.12], [1.52, -0.32], [1.58, -0.52], [1.62, -0.9], 'southShore'],
  },
  {
    id: 'meadow',
    kind: 'main',
    name: 'Meadow Road',
    line: ['southShore', [1.86, -1.4], [1.78 - half, -1.72], [1.98, -2.05], [1.98, -2.32], 'parkN'],
  },
  {
    id: 'north',
    kind: 'main',
    name: 'Norra Road',
    line: [
      'fork',
      [0.52, 0.85],
      [0.4, 1.2],
      [0.28, 1.52],
      [0.32, 1.88],
      [0.02, 2.2],
      [-0.28, 2.42],
      [-0.3, 2.85],
      [-0.55, 3.2],
      [-0.48, 3.62],
      [-0.72, 3.95],
      'norra',
    ],
  },
  {
    id: 'northCoast',
    kind: 'main',
    name: 'Skerrow Road',
    line: [
      'norra',
      [-0.3, 4.5],
      [0.1, 4.48],
      [0.5, 4.62],
      [0.92, 4.5],
      [1.25, 4.22],
      [1.62, 4.2],
      [2.0, 4.42],
      [2.4, 4.46],
      [2.75, 4.22],
      [3.15, 4.1],
      [3.5, 4.2],
      [3.85, 4.06],
      'lightFoot',
    ],
  },
  {
    id: 'zigzag',
    kind: 'main',
    name: 'Lantern Road',
    line: [
      'lightFoot',
      [4.34, 3.83],
      [4.42, 3.81],
      [4.46, 3.87],
      [4.43, 4.07],
      [4.44, 4.26],
      [4.49, 4.31],
      [4.54, 4.26],
      [4.59, 4.07],
      [4.62, 3.94],
      [4.67, 3.89],
      [4.72, 3.94],
      [4.74, 4.16],
      [4.75, 4.36],
      [4.8, 4.41],
      [4.86, 4.37],
      [4.9, 4.13],
      [4.93, 3.89],
      [4.98, 3.84],
      [5.03, 3.89],
      [5.05, 4.04],
      [5.06, 4.18],
      [5.11, 4.23],
      [5.17, 4.19],
      [5.22, 4.11],
      'light',
    ],
  },
  {
    id: 'lightPath',
    kind: 'path',
    name: 'Keeper’s Path',
    line: ['light', [5.45, 4.1], [5.53, 3.92], [5.5, 3.66], [5.58, 3.42], [5.5, 3.16], [5.62, 2.92], [5.76, 2.62]],
  },
  {
    id: 'east',
    kind: 'main',
    name: 'Longshore Road',
    line: [[5.76, 2.62], [5.74, 2.3], [5.86, 1.96], [5.76, 1.6], [5.58, 1.32], 'bridgeN'],
  },
  { id: 'bridge', kind: 'main', name: 'Sallow Bridge', line: ['bridgeN', 'bridgeS'] },
  {
    id: 'southEast',
    kind: 'main',
    name: 'Tidewaiters’ Road',
    line: [
      'bridgeS',
      [5.26, -1.0],
      [5.42, -1.35],
      [5.3, -1.72],
      [4.98, -2.0],
      [4.92, -2.35],
      [4.6, -2.62],
      [4.42, -2.95],
      [4.32, -3.25],
      [4.12, -3.48 - full],
      [3.82, -3.6 - full],
      [3.52, -3.55 - full],
      [3.3, -3.36],
      [3.22, -3.1],
      [2.92, -2.92],
      [2.66, -2.86],
      'parkE',
    ],
  },
  {
    id: 'ring',
    kind: 'street',
    name: 'Park Ring',
    closed: true,
    line: [
      'parkN',
      onPark(30, 1.02),
      onPark(60, 1.04),
      'parkE',
      onPark(120, 1.03),
      onPark(150, 0.95),
      'parkS',
      onPark(210, 1),
      onPark(240, 1.06),
      'parkW',
      onPark(300, 1.04),
      onPark(330, 0.97),
    ],
  },
  {
    id: 'parkRoad',
    kind: 'main',
    name: 'Park Road',
    line: ['parkW', [1.58, -2.82], [1.42, -2.88], { at: town(1.05, 0.62), corner: true }, 'highTurn', town(-0.3, 0.62)],
  },
  { id: 'bell', kind: 'street', name: 'Bell Street', line: ['highTurn', 'quayTurn'] },
  { id: 'quay', kind: 'street', name: 'Quay Street', line: [town(-0.6, 0.01), 'finish', 'quayTurn', 'pierRoot'] },
  { id: 'pier', kind: 'pier', name: 'Packet Pier', line: ['pierRoot', 'pierEnd'] },
];

const control = (item, corner = false) => {
  if (Array.isArray(item)) return { at: item, corner };
  return typeof item === 'string' ? { at: nodes[item], node: item, corner } : item;
};

const straight = new Set(['market', 'bell', 'quay', 'pier', 'bridge']);

// Roads that run into one another without a corner.
const joins = [
  ['market', 'west'],
  ['west', 'valley'],
  ['valley', 'causeway'],
  ['north', 'northCoast'],
  ['northCoast', 'zigzag'],
  ['zigzag', 'lightPath'],
  ['lightPath', 'east'],
  ['east', 'bridge'],
  ['bridge', 'southEast'],
];

/** Every road of the courses, sampled: { id, kind, name, points: [x, y][], index: { node: vertex } }. */
export function network(give) {
  const all = roads(give);
  const controlOf = (id, i) => control(all.find((road) => road.id === id).line.at(i)).at;
  return new Map(
    all.map((road) => {
      const from = joins.find((join) => join[1] === road.id)?.[0];
      const to = joins.find((join) => join[0] === road.id)?.[1];
      const controls = road.line.map((item) => control(item, straight.has(road.id)));
      const points = sample(controls, {
        closed: road.closed,
        before: from && controlOf(from, -2),
        after: to && controlOf(to, 1),
      });
      const index = {};
      for (const c of controls)
        if (c.node) index[c.node] = points.findIndex((p) => p[0] === c.at[0] && p[1] === c.at[1]);
      return [road.id, { id: road.id, kind: road.kind, name: road.name, closed: road.closed, points, index }];
    }),
  );
}

const shared = [['market', 'start', 'westGate'], ['west'], ['valley']];
const out = [
  ['parkRoad', 'parkW', 'highTurn'],
  ['bell'],
  ['quay', 'quayTurn', 'pierRoot'],
  ['pier', 'pierRoot', 'pierEnd'],
  ['pier', 'pierEnd', 'pierRoot'],
  ['quay', 'pierRoot', 'finish'],
];
const lap = [['ring', 'parkE', 'parkW']];
/** The courses, as stretches of roads: all of a road, or from one node to another (either way; the ring clockwise). */
export const courses = {
  full: [
    ...shared,
    ['north'],
    ['northCoast'],
    ['zigzag'],
    ['lightPath'],
    ['east'],
    ['bridge'],
    ['southEast'],
    ...lap,
    ['ring', 'parkW', 'parkE'],
    ...lap,
    ...out,
  ],
  half: [...shared, ['causeway'], ['meadow'], ['ring', 'parkN', 'parkE'], ...lap, ...out],
};

function stretch(net, [id, from, to]) {
  const road = net.get(id);
  if (from === undefined) return road.points;
  const [i, j] = [road.index[from], road.index[to]];
  if (i === undefined || j === undefined || i < 0 || j < 0) throw new Error(`${id}: no vertex at ${from} or ${to}`);
  if (road.closed)
    return i < j ? road.points.slice(i, j + 1) : [...road.points.slice(i, -1), ...road.points.slice(0, j + 1)];
  return i < j ? road.points.slice(i, j + 1) : road.points.slice(j, i + 1).toReversed();
}

/** The points of a course, in the plane: corners where roads meet are one point. */
export function coursePoints(net, course) {
  const parts = courses[course].map((part) => stretch(net, part));
  return parts.flatMap((points, i) => (i === 0 ? points : points.slice(1)));
}

/** Raw length of a course in metres, from the coordinates as printed. */
export const courseLength = (net, course) => geodesicLength(coursePoints(net, course).map((p) => toLonLat(p)));

/** The network tuned so that both races are at most a metre or so longer than their length. */
export function tunedNetwork() {
  const solve = (course, target, give) => {
    let [low, high] = [0, 0.6];
    for (let i = 0; i < 40; i += 1) {
      const k = (low + high) / 2;
      if (courseLength(network(give(k)), course) < target) low = k;
      else high = k;
    }
    return high;
  };
  const half = solve('half', 21098.4, (k) => ({ half: k, full: 0 }));
  const full = solve('full', 42196.2, (k) => ({ half, full: k }));
  return network({ half, full });
}
