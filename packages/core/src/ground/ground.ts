/**
 * The ground beside a race's courses: streets, areas and single points with OpenStreetMap's tags, as a map knows them.
 * Model: plain records in WGS 84. A map's geometry is good to metres: it informs, warns and draws, and moves no course, layout
 * or distance. A tag that is absent never means that there is none.
 */

/** OpenStreetMap's tags of one thing, key to value, as written. */
export type Tags = Readonly<Record<string, string>>;

/** Positions in order: degrees, both of the same length. */
export interface GroundLine {
  readonly lon: Float64Array;
  readonly lat: Float64Array;
}

/** A way that carries traffic, people or water, or is a barrier: a street, path, rail, stream, fence. */
export interface GroundWay extends GroundLine {
  /** As `way/123`: the id that OpenStreetMap gave, or one of the file. Where a clip cut a way, its pieces keep the id. */
  readonly id: string;
  readonly tags: Tags;
  /** Of each position, the node that it is. Ways meet where they share a node. */
  readonly nodes: readonly string[];
}

/** A surface: a building, water, a park. */
export interface GroundArea {
  readonly id: string;
  readonly tags: Tags;
  /** The outer ring first, then its holes; each closed, its last position its first. One area for each outer ring. */
  readonly rings: readonly GroundLine[];
}

/** A single thing: a hydrant, a crossing, a bollard, a bus stop. */
export interface GroundPoint {
  /** As `node/123`. The node of a way, where it is one. */
  readonly id: string;
  readonly tags: Tags;
  readonly lon: number;
  readonly lat: number;
}

/** What the map is and whom it credits. */
export interface GroundSource {
  /** Day of the data, `2026-10-02`; `null` where the file does not tell. */
  readonly date: string | null;
  /** `© OpenStreetMap contributors`, or the file's own. */
  readonly credit: string;
  /** `ODbL 1.0`, or the file's own; `null` where it is of a file that names none. */
  readonly licence: string | null;
}

/** All that a map knows, or what was clipped of it. */
export interface Ground {
  readonly source: GroundSource;
  readonly ways: readonly GroundWay[];
  readonly areas: readonly GroundArea[];
  readonly points: readonly GroundPoint[];
}
