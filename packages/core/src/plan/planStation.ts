/** A station of a plan as the rest of the code sees it: SI units, every default filled in. */
import type { LonLat } from '../finding.ts';
import type { DeclaredSide, ItemKind, PointKind, Served } from '../kinds.ts';
import type { Crew, Practice, SuppliesOverride } from './rules.ts';

/** A point near a station that is no item. */
export interface PlanPoint {
  readonly kind: PointKind;
  readonly at: LonLat;
  readonly name?: string;
  readonly street?: string;
  readonly note?: string;
}

/** One pass of a station by one race. */
export interface PassChoice {
  /** Id of the race. */
  readonly race: string;
  /** Index among that race's passes of the station, from 0. */
  readonly pass: number;
}

/** One physical place where things are handed out. It has `at` or `on`, never both. */
export interface PlanStation {
  readonly id: string;
  /** The id where the file gives none. */
  readonly name: string;
  /** The pin: upstream end of the first drink table. */
  readonly at?: LonLat;
  /** The pin by its course distance, metres; `offset` metres off the course's line to that side. */
  readonly on?: {
    readonly course: string;
    readonly measure: number;
    readonly side: DeclaredSide;
    readonly offset: number;
  };
  /** Declared, as the lead direction's runners see it. */
  readonly side?: DeclaredSide;
  /** The pass whose direction leads. Absent: the first pass of the first race served, unless the pin or the declared side tells another way. */
  readonly lead?: PassChoice;
  /** Ids of the races served. Absent: every race of the plan. */
  readonly races?: readonly string[];
  /** Passes served: all in the lead direction, all there are, or these. */
  readonly passes: 'lead' | 'all' | readonly PassChoice[];
  readonly serves: readonly Served[];
  /** Tables of each kind. Absent: as many as race day needs, else 1. */
  readonly tables: { readonly [kind in Served]?: number };
  /** Trash boxes. Absent: by `boxEvery` of the practice. */
  readonly boxes?: number;
  /** Of the road, metres. */
  readonly width?: number;
  /** The street in the plan's own words, which stand before those of a map: "Harbour Road, between Mill Lane and Quay Street". */
  readonly street?: string;
  /** Not to be moved by `improve`. */
  readonly fixed: boolean;
  /** Why it stands where it stands. */
  readonly why?: string;
  /** Who has seen the place, and when (ISO 8601). */
  readonly walked?: { readonly by: string; readonly date?: string };
  /** Overrides of the plan's own. */
  readonly practice: Partial<Practice>;
  /** Overrides of the plan's own, as read. */
  readonly supplies: SuppliesOverride;
  /** Overrides of the plan's own. */
  readonly crew: Partial<Crew>;
  /** Items placed by hand, instead of by the practice. */
  readonly items: { readonly [kind in ItemKind]?: { readonly at: LonLat } };
  readonly points: readonly PlanPoint[];
  readonly people: { readonly captain?: string; readonly radio?: string; readonly phone?: string };
  readonly note?: string;
  /** Pieces counted after the day. */
  readonly used?: { readonly [kind in Served]?: number };
}
