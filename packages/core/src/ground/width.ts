/**
 * How wide a street is by its tags: `width`, else lanes of 3.25 m, else what streets of its class mostly are.
 * Widths by class and of a lane are assumptions (common practice, no source), for mouths of junctions and for "about".
 * Source of how `width` is written: the OpenStreetMap wiki, "Map features/Units", from memory: metres unless a unit is given.
 */
import { metres } from '../units.ts';
import type { WidthStretch } from './along.ts';
import type { Tags } from './ground.ts';

export interface StreetWidth {
  /** Metres. */
  readonly width: number;
  readonly rests: WidthStretch['rests'];
}

const LANE = 3.25;
/** What is no street's width, metres: it is read as not given. */
const WIDEST = 100;
const MOST_LANES = 16;

/** Metres, assumed. A `_link` is one lane and its shoulders. */
const BY_CLASS: Readonly<Record<string, number>> = {
  motorway: 11,
  trunk: 8,
  primary: 7.5,
  secondary: 7,
  tertiary: 6.5,
  unclassified: 6,
  residential: 6,
  living_street: 5,
  road: 6,
  pedestrian: 6,
  service: 4,
  track: 3,
  cycleway: 2.5,
  bridleway: 2.5,
  footway: 2,
  path: 1.5,
  steps: 2,
};
const LINK = 5;
const BY_SERVICE: Readonly<Record<string, number>> = { driveway: 3, alley: 3, parking_aisle: 6 };
const OTHER = 5;

const PLAIN = /^(\d+(?:[.,]\d+)?) ?(m|metres|meters|ft|feet|')?$/u;
const FEET_AND_INCHES = /^(\d+)' ?(\d+(?:\.\d+)?)"$/u;

/** Metres from the text of a `width` tag: `7`, `7 m`, `7.5m`, `24'`, `24 ft`, `24'6"`; `null` where it is no width of a street. */
export function widthOf(text: string | undefined): number | null {
  const found = metresOf((text ?? '').trim());
  return found > 0 && found <= WIDEST ? found : null;
}

function metresOf(text: string): number {
  const both = FEET_AND_INCHES.exec(text);
  if (both !== null) return metres(Number(both[1]), 'ft') + metres(Number(both[2]), 'in');
  const plain = PLAIN.exec(text);
  if (plain === null) return 0;
  const count = Number(plain[1]!.replace(',', '.'));
  return metres(count, plain[2] === undefined || plain[2].startsWith('m') ? 'm' : 'ft');
}

/** The width of a street with such tags. */
export function streetWidth(tags: Tags): StreetWidth {
  const width = widthOf(tags['width']);
  if (width !== null) return { width, rests: 'width' };
  const lanes = /^\d+$/u.test(tags['lanes'] ?? '') ? Number(tags['lanes']) : 0;
  if (lanes > 0 && lanes <= MOST_LANES) return { width: lanes * LANE, rests: 'lanes' };
  return { width: byClass(tags), rests: 'class' };
}

function byClass({ highway = '', service = '' }: Tags): number {
  if (highway === 'service' && BY_SERVICE[service] !== undefined) return BY_SERVICE[service];
  return highway.endsWith('_link') ? LINK : (BY_CLASS[highway] ?? OTHER);
}
