/** A limit that is passed: what was found, what is read at most, what to do. */
import type { Counted, Reader } from '../../../limits.ts';
import type { LimitParams } from '../../params/limits.ts';
import type { TextsOf } from '../../sentence.ts';

/** What is read, at the head of a sentence. */
export const SUBJECTS: { readonly [reader in Reader]: string } = {
  plan: 'The plan',
  gpx: 'The GPX file',
  geojson: 'The GeoJSON',
  drawing: 'The background drawing',
  ground: 'The map of the ground',
  results: 'The results file',
  list: 'The list of stations',
  roster: 'The crew list',
  leftovers: 'The form for what was left',
  zip: 'The ZIP file',
};

/** What is counted, after a number. */
export const NOUNS: { readonly [what in Counted]: string } = {
  bytes: 'MB',
  unpacked: 'MB of unpacked files',
  files: 'files',
  depth: 'levels of nesting',
  values: 'values',
  points: 'points',
  waypoints: 'waypoints',
  lines: 'tracks and routes',
  segments: 'track segments',
  attributes: 'attributes in one tag',
  namespaces: 'namespaces in force',
  characters: 'characters in one text',
  rows: 'rows',
  columns: 'columns',
  cells: 'cells',
  features: 'features',
  entries: 'entries in one list',
  courses: 'courses',
  races: 'races',
  waves: 'waves',
  marks: 'distance marks',
  stations: 'stations',
  zones: 'zones',
  vehicles: 'vehicles',
  waivers: 'waivers',
  variants: 'variants',
  crew: 'people',
};

const ACTIONS: { readonly [reader in Reader]: string } = {
  plan: 'Delete what is not needed, keep courses in GPX files, or make several plans.',
  gpx: 'Export the course alone, without sensor data, or with fewer points.',
  geojson: 'Give the course alone, or with fewer points.',
  drawing: 'Cut it to the area of the race, or simplify its lines.',
  ground: 'Cut it along the courses of this plan alone (`halfcup ground`).',
  results: 'Keep the finish times and splits of one race.',
  list: 'Keep the stations of this plan.',
  roster: 'Keep the people of this plan.',
  leftovers: 'Use the form of this plan.',
  zip: 'Unpack it, and open only the plan and its files.',
};

/** Where what is past the limit says more than what is read does. */
const OWN_ACTIONS: { readonly [what in Counted]?: string } = {
  attributes: 'It may be damaged: export the course again as GPX 1.1.',
  namespaces: 'It may be damaged: export the course again as GPX 1.1.',
  depth: 'It may be damaged: export it again.',
  characters: 'Shorten the text, or export the file again.',
};

/** Bytes are told in millions. */
export const isSize = (what: Counted): boolean => what === 'bytes' || what === 'unpacked';

export const limits: TextsOf<LimitParams> = {
  'past-limit': ({ reader, what, most, found }, say) => {
    const sized = isSize(what);
    const shown = (count: number): string => say.count(sized ? Math.ceil(count / 1_000_000) : count);
    return [
      `${SUBJECTS[reader]} has ${found === undefined ? `more than ${shown(most)}` : shown(found)} ${NOUNS[what]}.`,
      `It should have at most ${shown(most)}${sized ? ' MB' : ''}.`,
      OWN_ACTIONS[what] ?? ACTIONS[reader],
    ];
  },
  'more-problems': ({ listed }, say) => [
    `Only ${say.count(listed)} problems are listed, and there are more.`,
    null,
    'Fix these, then look again.',
  ],
};
