/**
 * A street with all that a map may have on it and beside it, a good plan on it, and mistakes planted one at a time. Not part of the
 * package. Harbour Road runs 8 km east, then Hill Street 600 m north; the course's distances are metres along them.
 */
import type { Ground, Tags } from '../../ground/ground.ts';
import { type ReviewedPlan, reviewPlan } from '../../whole.ts';
import { valueOf } from '../courses.ts';
import { type Place, drawnGround, placed } from '../towns.ts';

/** The corner of Harbour Road and Hill Street, metres east. */
const CORNER = 8000;
const NORTH = 600;

/** A place by course distance and metres to the left. */
export const spot = (measure: number, left: number = 0): Place =>
  measure <= CORNER ? [measure, left] : [CORNER - left, measure - CORNER];

/** A drawing that mistakes may change. */
export interface Town {
  places: Record<string, Place>;
  ways: Record<string, readonly [line: string, tags: Tags]>;
  points: Record<string, Tags>;
  areas: Record<string, readonly [line: string, tags: Tags]>;
  date: string | null;
}

const ROAD: Tags = { highway: 'secondary', name: 'Harbour Road', width: '9' };

/** Nodes of Harbour Road, and the tags of the piece that begins there. */
const PIECES: readonly (readonly [measure: number, tags: Tags])[] = [
  [0, ROAD],
  [400, ROAD],
  [1000, ROAD],
  [1400, { ...ROAD, bridge: 'yes', layer: '1' }],
  [1440, ROAD],
  [1800, { ...ROAD, tunnel: 'yes', layer: '-1' }],
  [1860, ROAD],
  [2200, ROAD],
  [3400, ROAD],
  [5400, { ...ROAD, width: '3.5' }],
  [5500, ROAD],
  [8000, ROAD],
];

function box(town: Town, id: string, [x, y]: Place, [wide, deep]: Place, tags: Tags): void {
  const corners = [
    [x, y],
    [x + wide, y],
    [x + wide, y + deep],
    [x, y + deep],
  ] as const;
  corners.forEach((place, k) => (town.places[`${id}.${k}`] = place));
  town.areas[id] = [`${id}.0 ${id}.1 ${id}.2 ${id}.3 ${id}.0`, tags];
}

/** Draws the whole town anew. */
export function groundTown(): Town {
  const town: Town = { places: {}, ways: {}, points: {}, areas: {}, date: '2026-10-02' };
  for (const [measure] of PIECES) town.places[`r${measure}`] = spot(measure);
  PIECES.slice(0, -1).forEach(([measure, tags], k) => {
    town.ways[`harbour.${measure}`] = [`r${measure} r${PIECES[k + 1]![0]}`, tags];
  });
  town.places['hillTop'] = spot(CORNER + NORTH);
  town.ways['hill'] = ['r8000 hillTop', { highway: 'residential', name: 'Hill Street', width: '8' }];
  const across = (node: string, id: string, tags: Tags): void => {
    const [x] = town.places[node]!;
    town.places[`${id}.n`] = [x, 80];
    town.places[`${id}.s`] = [x, -80];
    town.ways[id] = [`${id}.n ${node} ${id}.s`, tags];
  };
  across('r400', 'quay', { highway: 'residential', name: 'Quay Street' });
  across('r1000', 'mill', { highway: 'residential', name: 'Mill Lane' });
  across('r2200', 'railway', { railway: 'rail' });
  town.points['r2200'] = { railway: 'level_crossing' };
  town.points['r3400'] = { highway: 'crossing' };
  const beside = (id: string, measure: number, left: number, tags: Tags): void => {
    town.places[id] = spot(measure, left);
    town.points[id] = tags;
  };
  beside('stop', 2600, -6, { highway: 'bus_stop', name: 'Fish Market' });
  beside('tram', 3000, 0, { railway: 'tram_stop', name: 'Rope Walk' });
  beside('hydrant', 3800, -6, { emergency: 'fire_hydrant' });
  beside('ambulances', 5000, 20, { emergency: 'ambulance_station', name: 'Ambulance Yard' });
  box(town, 'engines', [4195, 14], [10, 20], { building: 'yes', amenity: 'fire_station', name: 'Engine House' });
  box(town, 'clinic', [4595, 25], [10, 20], { building: 'yes', amenity: 'hospital', name: 'Dune Hospital' });
  // A house in the inner corner of Harbour Road and Hill Street, and one for a sign to hide behind.
  box(town, 'corner', [7900, 8], [92, 60], { building: 'house' });
  box(town, 'shed', [6480, -22], [8, 14], { building: 'yes' });
  box(town, 'house', [560, 12], [12, 10], { building: 'house' });
  return town;
}

/** The plan's text as mistakes change it. */
export interface TownPlan {
  date: string;
  ground: string;
  races: { id: string; course: string; division: 'run' | 'wheels' }[];
  stations: TownStation[];
}

interface TownStation {
  id: string;
  on: { course: string; measure: number; side: 'left' | 'right' };
  width?: number;
  street?: string;
  items?: { [kind: string]: { at: readonly [number, number] } };
}

export const townPlan = (): TownPlan => ({
  date: '2027-09-12',
  ground: 'ground.geojson',
  races: [{ id: 'r', course: 'c', division: 'run' }],
  stations: [
    { id: 's1', on: { course: 'c', measure: 600, side: 'right' }, width: 9 },
    { id: 's2', on: { course: 'c', measure: 7000, side: 'right' }, width: 9 },
  ],
});

const LINE = Array.from({ length: (CORNER + NORTH) / 25 + 1 }, (_, k) => placed(spot(k * 25)));

/** The plan as its file has it, and its map as it is read. */
export function townFiles(
  plan: TownPlan,
  { date, ...drawing }: Town,
): { readonly text: string; readonly ground: Ground } {
  const ground = drawnGround(drawing);
  const course = { id: 'c', name: 'Town', line: LINE, drawn: 'centre' };
  return {
    text: JSON.stringify({ format: 'halfcup-plan', version: 1, courses: [course], ...plan }),
    ground: { ...ground, source: { ...ground.source, date } },
  };
}

/** What comes of a plan in a town; `there`: whether its map is there. */
export function townReview(plan: TownPlan, town: Town, there: boolean = true): ReviewedPlan {
  const { text, ground } = townFiles(plan, town);
  return valueOf(reviewPlan({ plan: text, files: there ? { [plan.ground]: ground } : {} }));
}

/** Puts the first station elsewhere, by metres of its pin. */
export const at =
  (measure: number, keys: Partial<TownStation> & { side?: 'left' | 'right' } = {}) =>
  ({ stations }: TownPlan): void => {
    const { side = 'right', ...more } = keys;
    stations[0] = { ...stations[0]!, ...more, on: { course: 'c', measure, side } };
  };

/** One mistake, and the code that names it. */
export interface TownMistake {
  readonly name: string;
  readonly code: string;
  readonly plant: (plan: TownPlan, town: Town) => void;
  /** The same just inside what is allowed, of which that code is not found. */
  readonly inside?: (plan: TownPlan, town: Town) => void;
  /** A note of the whole plan, or the finding of a course: no station is named. */
  readonly whole?: true;
}

/** Cuts a node into Harbour Road between two of its nodes, and gives the piece behind it other tags, up to `until`. */
function cut(town: Town, measure: number, until: number, tags: Tags): void {
  town.places[`r${measure}`] = spot(measure);
  town.places[`r${until}`] = spot(until);
  const [id, [line, own]] = Object.entries(town.ways).find(([, [nodes]]) => {
    const [from, to] = nodes.split(' ').map((node) => Number(node.slice(1)));
    return from! < measure && until < to!;
  })!;
  const [first, last] = line.split(' ');
  town.ways[id] = [`${first} r${measure}`, own];
  town.ways[`cut.${measure}`] = [`r${measure} r${until}`, tags];
  town.ways[`rest.${until}`] = [`r${until} ${last}`, own];
}

const wheels = (plan: TownPlan): void => void (plan.races[0]!.division = 'wheels');
const gate = (town: Town, tags: Tags): void => {
  cut(town, 6200, 6210, ROAD);
  town.points['r6200'] = tags;
};
const steps = (town: Town, measure: number): void =>
  cut(town, measure, measure + 12, { highway: 'steps', name: 'Harbour Road' });

export const TOWN_MISTAKES: readonly TownMistake[] = [
  { name: 'tables in the mouth of Mill Lane', code: 'item-in-mouth', plant: at(997), inside: at(1009) },
  { name: 'boxes in the mouth of Mill Lane', code: 'item-in-mouth', plant: at(940), inside: at(850) },
  { name: 'the sign in the mouth of Mill Lane', code: 'item-in-mouth', plant: at(1091.44), inside: at(1100.5) },
  { name: 'tables on a bridge', code: 'item-on-bridge', plant: at(1420), inside: at(1441) },
  { name: 'tables in a tunnel', code: 'item-in-tunnel', plant: at(1820), inside: at(1861) },
  { name: 'boxes on a level crossing', code: 'item-on-level-crossing', plant: at(2140), inside: at(2080) },
  { name: 'tables by the rails', code: 'item-on-level-crossing', plant: at(2214), inside: at(2216) },
  { name: 'tables at a bus stop', code: 'item-at-stop', plant: at(2598), inside: at(2598, { side: 'left' }) },
  { name: 'tables at a tram stop', code: 'item-at-stop', plant: at(3000), inside: at(3011) },
  { name: 'tables on a pedestrian crossing', code: 'item-on-crossing', plant: at(3398), inside: at(3403) },
  { name: 'tables over a hydrant', code: 'hydrant-blocked', plant: at(3798), inside: at(3798, { side: 'left' }) },
  { name: 'tables just past a hydrant', code: 'hydrant-blocked', plant: at(3804), inside: at(3805) },
  { name: 'tables before a fire station', code: 'fire-station-blocked', plant: at(4200), inside: at(4229) },
  { name: 'tables before a hospital', code: 'hospital-blocked', plant: at(4600), inside: at(4640) },
  { name: 'tables before an ambulance station', code: 'hospital-blocked', plant: at(5000), inside: at(5031) },
  {
    name: 'a station where the map has 3.5 m of road, and the plan no width',
    code: 'narrow-by-map',
    plant: (plan) => {
      at(5450)(plan);
      delete plan.stations[0]!.width;
    },
    inside: at(5450, { width: 9 }),
  },
  {
    name: 'a station without a width',
    code: 'width-from-map',
    whole: true,
    plant: (plan) => void delete plan.stations[0]!.width,
  },
  {
    name: 'the sign behind the corner of a shed',
    code: 'sign-unseen',
    plant: at(6590, { items: { sign: { at: placed(spot(6494, -16)) } } }),
    inside: at(6590, { items: { sign: { at: placed(spot(6494, -6)) } } }),
  },
  {
    name: 'tables round the corner of a house',
    code: 'tables-unseen',
    plant: at(8050, { side: 'left' }),
    inside: at(8450, { side: 'left' }),
  },
  {
    name: 'a gate across the course',
    code: 'gate-on-course',
    whole: true,
    plant: (_, town) => gate(town, { barrier: 'gate' }),
    inside: (_, town) => gate(town, { barrier: 'kerb' }),
  },
  {
    name: 'a bollard on the course',
    code: 'gate-on-course',
    whole: true,
    plant: (_, town) => gate(town, { barrier: 'bollard' }),
  },
  {
    name: 'steps on the way of wheels',
    code: 'steps-with-wheels',
    whole: true,
    plant: (plan, town) => {
      wheels(plan);
      steps(town, 6200);
    },
    inside: (_, town) => steps(town, 6200),
  },
  { name: 'tables on steps', code: 'item-on-steps', plant: (_, town) => steps(town, 598) },
  {
    name: 'cobbles on the way of wheels',
    code: 'rough-surface',
    whole: true,
    plant: (plan, town) => {
      wheels(plan);
      cut(town, 6200, 6260, { ...ROAD, surface: 'cobblestone' });
    },
    inside: (plan, town) => {
      wheels(plan);
      cut(town, 6200, 6260, { ...ROAD, surface: 'asphalt' });
    },
  },
  {
    name: 'a map of another town',
    code: 'off-map',
    whole: true,
    plant: (_, town) => {
      for (const [name, [east, north]] of Object.entries(town.places)) town.places[name] = [east, north + 4000];
    },
  },
  {
    name: 'a map that lacks a street of the course',
    code: 'off-map',
    whole: true,
    plant: (_, town) => void delete town.ways['hill'],
  },
  {
    name: 'a map of five years ago',
    code: 'map-old',
    whole: true,
    plant: (_, town) => void (town.date = '2022-09-01'),
    inside: (_, town) => void (town.date = '2025-09-13'),
  },
  { name: 'a map of no day', code: 'map-old', whole: true, plant: (_, town) => void (town.date = null) },
  {
    name: 'a map without houses and hydrants',
    code: 'ground-silent',
    whole: true,
    plant: (_, town) => {
      town.areas = {};
      delete town.points['hydrant'];
    },
  },
];
