/** Named parameters of the findings on reading street files, by code. Counts are of elements; texts of the file one line and cut. */
import type { Found } from '../found.ts';
import type { XmlFault } from './gpx.ts';

/** Nothing to say but the code. */
type None = Readonly<Record<string, never>>;

/** A street file as people know it. */
export type GroundFormat = 'xml' | 'pbf' | 'geojson' | 'gzip';

/** What a street file may hold so much of. */
export type GroundBound =
  | 'megabytes'
  | 'nodes'
  | 'ways'
  | 'relations'
  | 'features'
  | 'attributes'
  | 'tagLength'
  | 'depth'
  | 'kept';

/** Why a feature of GeoJSON, or an element of OpenStreetMap, is left out; `element`: as the file calls it. */
type ElementFault =
  | { readonly problem: 'position'; readonly found: Found }
  | { readonly problem: 'geometry' | 'feature' | 'nodes'; readonly found: Found }
  | { readonly problem: 'id'; readonly element: string; readonly found: Found; readonly most: number }
  | { readonly problem: 'latitude' | 'longitude'; readonly element: string; readonly found: Found };

export interface GroundParams {
  'ground-empty': None;
  'ground-foreign':
    | { readonly kind: 'html' | 'zip' | 'binary' | 'nul' }
    | { readonly kind: 'text'; readonly found: string };
  'ground-root': { readonly root: string } | { readonly type: Found } | { readonly missing: 'features' };
  'ground-cut-off': { readonly format: GroundFormat };
  'ground-broken': { readonly format: 'pbf' | 'gzip' };
  'ground-json': { readonly found: string };
  'ground-malformed': { readonly fault: XmlFault; readonly name: string };
  'ground-encoding':
    | { readonly problem: 'notUtf16' | 'unsupported'; readonly encoding: string }
    | { readonly problem: 'invalid'; readonly encoding: string; readonly byte: string };
  'ground-pbf-feature': { readonly feature: string };
  'ground-limit': { readonly bound: GroundBound; readonly most: number };
  /** `more`: after those listed, so many others of `all`. */
  'ground-element': ElementFault | { readonly more: number; readonly all: number };
  /** `within`: metres from a course. */
  'ground-nothing': { readonly read: number; readonly within: number };
  'ground-no-course': None;
}
