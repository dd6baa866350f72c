/**
 * What the page holds: the open plan, what is selected and pointed at, and how it is shown.
 * One store is made at the start and handed down; selection and view are never part of a plan.
 */
import type { Analysis, Finding, Improvement, LonLat, PlanDocument, Result } from '@halfcup/core';
import type { OfferedCourse, PlanStation, Units } from '@halfcup/core/plan';
import type { GpxDocument } from '@halfcup/core/stages';
import { signal, type ReadonlySignal, type Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { PLAN_BACKGROUND, type Background } from './backgrounds.ts';
import { paced } from './paced.ts';
import type { PlanFiles } from './planFiles.ts';
import { EMPTY_HISTORY, type History } from './history.ts';

/** A plan with everything that was read to compute it. Its text is the only truth; all else follows from it. */
export interface OpenPlan {
  /** The file as it stands, without any variant laid over. */
  readonly document: PlanDocument;
  /** The variant that `analysis` shows; `null`: the main plan. */
  readonly variant: string | null;
  readonly files: PlanFiles;
  /** Of the plan with the variant laid over: `analysis.plan` is what is shown. */
  readonly analysis: Analysis;
  /** Of reading and of checking, together. */
  readonly findings: readonly Finding[];
}

/** A plan that cannot be computed yet, because files that it names are not here. */
export interface WaitingPlan {
  readonly document: PlanDocument;
  readonly files: PlanFiles;
  readonly missing: readonly string[];
  /** Files that came and that may be more than one of those missing, or one of several that may be the same. */
  readonly unclear: readonly UnclearFile[];
}

export interface UnclearFile {
  /** As it came. */
  readonly name: string;
  readonly blob: Blob;
  /** Names of the plan that it may be. */
  readonly names: readonly string[];
}

/** A GPX file that is to become a course. */
export interface CourseFile {
  /** Its own name without a folder; no two of a list have the same. */
  readonly name: string;
  readonly document: GpxDocument;
  readonly original: Blob;
  /** Its course before anything is chosen about it, where another thread has made it already. */
  readonly offered?: Result<OfferedCourse>;
}

/** Courses without a plan: the start sheet asks what the plan is to be. */
export interface Starting {
  readonly files: readonly CourseFile[];
  /** What reading them has found. */
  readonly findings: readonly Finding[];
}

/** Where the open plan came from, where it is kept, and the file that it was last saved to. One record for each time that a plan is opened. */
export interface Origin {
  /** The name under which the browser keeps it. */
  readonly id: string;
  readonly from: 'demo' | 'file' | 'kept';
  /** The text that a file of the person's holds; `null` where none does. */
  readonly saved: string | null;
  /** The file itself, where the browser lets the page write to it again. */
  readonly handle: FileSystemFileHandle | null;
  /** When that file was last changed, as far as this page knows, milliseconds since 1970. */
  readonly modified: number | null;
  /** Made as a copy of another kept plan. */
  readonly copy: boolean;
}

/** Whether the last change is kept: it is; the browser refuses; another tab has the plan, and nothing is written from here. */
export type Keeping = 'kept' | 'writing' | 'failed' | 'elsewhere';

/** Why what was dropped or chosen did not open. */
export interface Refusal {
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

/** A place on a course. */
export interface CoursePlace {
  readonly course: string;
  readonly measure: number;
}

/** Work that takes long, elsewhere than in this thread. */
export interface Job {
  /** As a person reads it: "Reading big.gpx". */
  readonly label: string;
  /** 0 to 1; `null` where nobody can tell. */
  readonly share: number | null;
  readonly stop: () => void;
}

/** A line for the person at the foot of the map, read out by screen readers. */
export interface Notice {
  readonly text: string;
  /** Something to be decided: it stays until that is done, and does not go by itself. */
  readonly choices?: readonly { readonly label: string; readonly act: () => void }[];
}

/** Where the map and the strip are asked to go; a new object each time, so that asking twice goes twice. */
export type Destination =
  | { readonly kind: 'whole' }
  | { readonly kind: 'station'; readonly station: string }
  | {
      readonly kind: 'place';
      readonly course: string | null;
      readonly measure: number | null;
      readonly at: LonLat | null;
    };

export type Pane = 'strip' | 'stations' | 'plan' | 'variants' | 'review' | 'day' | 'papers' | 'road' | 'station';

/** How the review's list is grouped. */
export type Grouping = 'theme' | 'severity' | 'station';

/** A station that somebody moves and has not put down yet: `open` shows it at the place tried, `from` is the plan without the trial. */
export interface Trial {
  readonly from: OpenPlan;
  readonly station: string;
}

/** Points recorded on the ground, compared with the plan; no part of it. */
export interface Placed {
  readonly file: string;
  readonly document: GpxDocument;
  readonly bytes: Blob;
  /** What reading the file has found. */
  readonly findings: readonly Finding[];
}

/** Better places that were searched for, with the text and the variant that they belong to. */
export interface Improved extends Omit<Improvement, 'analysis' | 'plan'> {
  readonly text: string;
  readonly variant: string | null;
  readonly within: number;
  /** Of the plan with its stations moved. */
  readonly stations: readonly PlanStation[];
}

/** What can be folded away beside the map. */
export type Part = 'panel' | 'strip' | 'station';

/** What presses on the map are for, beside looking. */
export type MapTool =
  | { readonly kind: 'draw'; readonly corners: readonly LonLat[] }
  /** `corners`: while one is moved, else as the plan has them. */
  | { readonly kind: 'reshape'; readonly zone: number; readonly corners: readonly LonLat[] | null }
  | { readonly kind: 'measure'; readonly points: readonly LonLat[] };

/** What can be done at a place of the map. */
export interface MapMenu {
  readonly at: LonLat;
  /** On the map's pane, pixels. */
  readonly x: number;
  readonly y: number;
  readonly station: string | null;
  /** The course there, and the side of it. */
  readonly place: (CoursePlace & { readonly side: 'left' | 'right' }) | null;
}

/** Which paper is seen. */
export interface PaperSeen {
  /** Its name, that of all stations. */
  readonly name: string;
  /** The papers are for all stations as long as this one is selected; `null`: they follow the selection. */
  readonly allWhile: string | null;
}

export interface Store {
  /** What is shown; during a trial with the station at the place tried. */
  readonly open: Signal<OpenPlan | null>;
  readonly trial: Signal<Trial | null>;
  readonly origin: Signal<Origin | null>;
  readonly keeping: Signal<Keeping>;
  readonly history: Signal<History>;
  readonly starting: Signal<Starting | null>;
  /** A GPX file that came while a plan was open, to be asked about. */
  readonly arrived: Signal<CourseFile | null>;
  readonly waiting: Signal<WaitingPlan | null>;
  readonly refusal: Signal<Refusal | null>;
  readonly selected: Signal<string | null>;
  readonly destination: Signal<Destination>;
  /** Shared by map and strip. */
  readonly cursor: Signal<CoursePlace | null>;
  readonly course: Signal<string | null>;
  /** Course distance at the two ends of the strip; `null` for the whole course. */
  readonly stripView: Signal<readonly [number, number] | null>;
  readonly units: Signal<Units>;
  readonly pane: Signal<Pane>;
  /** The window has room for one column only. */
  readonly narrow: Signal<boolean>;
  readonly loading: Signal<boolean>;
  /** The place about which somebody asks "where is this?". */
  readonly asked: Signal<CoursePlace | null>;
  /** The variant that is drawn and compared beside the one shown. */
  readonly against: Signal<OpenPlan | null>;
  readonly placed: Signal<Placed | null>;
  readonly improved: Signal<Improved | null>;
  readonly background: Signal<Background>;
  readonly grouping: Signal<Grouping>;
  /** Groups of the review's list that somebody has folded (true) or unfolded (false), each with how it is grouped before its own key. */
  readonly folded: Signal<ReadonlyMap<string, boolean>>;
  /** The finding that somebody asks for on the map or the strip: the review goes to it. A new object each time. */
  readonly sought: Signal<{ readonly finding: Finding } | null>;
  readonly paper: Signal<PaperSeen>;
  readonly tool: Signal<MapTool | null>;
  /** Where the pointer is while a tool is used. */
  readonly pointer: Signal<LonLat | null>;
  readonly menu: Signal<MapMenu | null>;
  /** The map stays where it is, whatever is chosen or edited elsewhere. */
  readonly pinned: Signal<boolean>;
  /** Parts of the page that somebody has folded, so that the map has their room. */
  readonly folds: Signal<ReadonlySet<Part>>;
  /** The station whose findings stand on the map. */
  readonly foundAt: Signal<string | null>;
  readonly job: Signal<Job | null>;
  readonly notice: Signal<Notice | null>;
  /** The time of race day that is shown, seconds after midnight; `null`: the clock is off. */
  readonly clock: Signal<number | null>;
  /** The same as strip, panels and words tell it: four times a second while it moves, less often where the browser draws slowly; the map alone follows with each frame. */
  readonly clockTold: ReadonlySignal<number | null>;
  /** The clock runs. */
  readonly playing: Signal<boolean>;
  /** To be decided about the plan's keeping; notices come and go beside it. */
  readonly question: Signal<Notice | null>;
  /** To be decided about the background: whom it may ask. */
  readonly asking: Signal<Notice | null>;
}

const TOLD_EVERY_MS = 250;

export function createStore(): Store {
  const clock = signal<number | null>(null);
  return { ...emptyStore(), clock, clockTold: paced(clock, TOLD_EVERY_MS) };
}

const emptyStore = (): Omit<Store, 'clock' | 'clockTold'> => ({
  open: signal(null),
  trial: signal(null),
  origin: signal(null),
  keeping: signal('kept'),
  history: signal(EMPTY_HISTORY),
  starting: signal(null),
  arrived: signal(null),
  waiting: signal(null),
  refusal: signal(null),
  selected: signal(null),
  destination: signal({ kind: 'whole' }),
  cursor: signal(null),
  course: signal(null),
  stripView: signal(null),
  units: signal('metric'),
  pane: signal('stations'),
  narrow: signal(false),
  loading: signal(true),
  asked: signal(null),
  against: signal(null),
  placed: signal(null),
  improved: signal(null),
  background: signal(PLAN_BACKGROUND),
  grouping: signal('theme'),
  folded: signal(new Map()),
  sought: signal(null),
  paper: signal({ name: 'captains.html', allWhile: null }),
  tool: signal(null),
  pointer: signal(null),
  menu: signal(null),
  pinned: signal(false),
  folds: signal(new Set()),
  foundAt: signal(null),
  job: signal(null),
  notice: signal(null),
  playing: signal(false),
  question: signal(null),
  asking: signal(null),
});

const StoreContext = createContext<Store | null>(null);
export const StoreProvider = StoreContext.Provider;

export function useStore(): Store {
  const store = useContext(StoreContext);
  if (store === null) throw new Error('a component was rendered outside StoreProvider');
  return store;
}
