/** Sentences of the papers that are lists: placements, supplies, runs, overview, and the sheet that names them all. */

export interface PlacementText {
  readonly title: string;
  readonly how: string;
  readonly margin: string;
  readonly course: (name: string) => string;
  readonly otherDirection: string;
  /** Said of a direction whose tables have been listed before. */
  readonly sameTables: string;
  readonly chalk: string;
  /** Column headings. */
  readonly peg: string;
  readonly distance: string;
  readonly before: string;
  readonly fromChalk: string;
  readonly position: string;
  readonly wheeled: string;
  readonly done: string;
  readonly begins: (what: string) => string;
  readonly ends: (what: string) => string;
  readonly byHand: string;
  readonly noPlace: string;
  readonly why: string;
  readonly offCourse: (stations: string) => string;
}

export interface SuppliesText {
  readonly title: string;
  readonly totals: string;
  readonly each: string;
  readonly item: string;
  readonly packs: string;
  readonly need: string;
  readonly pack: string;
  readonly none: string;
  readonly defaultsTitle: string;
  readonly defaultsAbout: string;
  readonly changedTitle: string;
  readonly changedAbout: string;
  readonly stationsTitle: string;
  readonly stationsAbout: string;
  readonly what: string;
  readonly value: string;
  readonly usual: string;
  readonly source: string;
  readonly yes: string;
  /** That a race's runners slow as splits of past results tell; `runners`: how many finishers. */
  readonly bySplits: (race: string, splits: readonly string[], runners: string) => string;
  /** An English phrase of the table of defaults in this language; `null` where there is none. */
  readonly resupply: {
    readonly title: string;
    readonly about: string;
    readonly drink: string;
    readonly called: string;
    readonly arrives: string;
    readonly runsOut: string;
    readonly inTime: string;
    readonly yes: string;
    readonly no: string;
    readonly never: string;
  };
  readonly phrase: (english: string) => string | null;
}

export interface RunsText {
  readonly dropTitle: string;
  readonly collectTitle: string;
  readonly vehicle: (kg: string, places: string) => string;
  readonly loadedFrom: (time: string) => string;
  readonly run: (number: number, kg: string) => string;
  /** Behind the runs that are printed. */
  readonly more: (count: number, kg: string) => string;
  readonly way: string;
  readonly arrive: string;
  readonly leave: string;
  readonly crewAt: string;
  readonly side: string;
  readonly leftHand: string;
  readonly rightHand: string;
  readonly at: string;
  /** Where the unloading point is far from them. */
  readonly tablesOn: (side: string) => string;
  readonly loadAt: string;
  readonly atPin: string;
  readonly access: string;
  readonly carry: string;
  readonly straightLine: (length: string) => string;
  readonly noCarry: string;
  readonly street: string;
  readonly position: string;
  readonly note: string;
  readonly load: string;
  readonly weight: string;
  readonly loaded: string;
  readonly inAll: string;
  readonly dark: (sunrise: string) => string;
  readonly darkEvening: (sunset: string) => string;
  readonly mayBeDark: string;
  readonly lamp: string;
  readonly afterRelease: (time: string) => string;
  readonly piles: string;
  /** Above the loads, the last stop first. */
  readonly loading: string;
  /** Under the code of a place. */
  readonly map: string;
  readonly none: string;
  readonly captain: string;
}

export interface OverviewText {
  readonly title: string;
  readonly map: string;
  readonly strip: (course: string) => string;
  readonly sides: string;
  readonly start: string;
  readonly finish: string;
  readonly number: string;
  readonly name: string;
  readonly courses: string;
  readonly elevation: (low: string, high: string) => string;
  /** Behind a race's name: its first start, and its last where there are several. */
  readonly starts: (first: string, last: string | null) => string;
  /** What the review found. */
  readonly found: (errors: number, warnings: number, notes: number) => string;
  readonly north: string;
}

/** The whole plan as one file to look at. */
export interface SharedText {
  readonly title: string;
  readonly arrivals: string;
  readonly open: string;
  readonly found: string;
  readonly none: string;
  readonly what: string;
  readonly finding: string;
  readonly waived: string;
  readonly severity: Readonly<Record<'error' | 'warning' | 'note', string>>;
}

export interface IndexText {
  readonly title: string;
  readonly about: string;
  readonly report: string;
}

/** The list-like papers. */
export interface ListsText {
  readonly placement: PlacementText;
  readonly supplies: SuppliesText;
  readonly runs: RunsText;
  readonly overview: OverviewText;
  readonly shared: SharedText;
  readonly index: IndexText;
}
