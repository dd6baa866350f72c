/** Sentences of the papers that are lists: placements, supplies, runs, overview. */

/** The list-like papers. */
export interface ListsText {
  readonly placementTitle: string;
}
