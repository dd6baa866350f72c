/** Stations drawn by chance for tests of what is drawn of them. Not part of the package. */
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { type DrawingInput, type DrawingSize, layoutDrawing } from '../papers/layoutDrawing.ts';
import type { KerbMouth } from '../papers/drawing/frame.ts';
import { kerbGates, kerbPoints } from '../papers/stationGround.ts';
import type { PlanStation, PointKind } from '../plan/plan.ts';
import type { Served } from '../kinds.ts';
import { textOf } from '../text/languages.ts';
import { ORIGIN, from, generator, turtle, valueOf } from './courses.ts';
import { layoutOf, planned } from './plans.ts';
import { courseTable } from '../station/seeStation.ts';
import { layStation } from '../layout/layStation.ts';

const KINDS: readonly PointKind[] = ['drop', 'access', 'medical', 'toilets', 'radio', 'other'];
const SIZES = ['panel', 'half', 'full'] as const;
/** Millimetres. */
const WIDTHS: Readonly<Record<DrawingSize, number>> = { panel: 84, half: 186, full: 269 };

export interface RandomStation {
  readonly layout: Layout;
  readonly station: StationLayout;
  readonly direction: LaidDirection;
  readonly input: DrawingInput;
}

/** Random stations, the same for the same seed: tables, hands, boxes, points, gates, sides, bends, languages, sizes. */
export function randomStations(count: number, seed: number): RandomStation[] {
  const next = generator(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return Array.from({ length: count }, (): RandomStation => {
    const size = pick(SIZES);
    const layout = layoutWith(pick, whole, next);
    const needs = {
      tables: { gel: 1, sportsDrink: 1, water: 1 },
      crew: { handOut: whole(1, 30) },
    };
    const station =
      next() < 0.6 ? valueOf(layStation(layout.plan, 0, courseTable(layout.courses), needs)) : layout.stations[0];
    const direction = station!.directions[0]!;
    const language = pick(['en', 'es']);
    const mouths = next() < 0.4 ? Array.from({ length: whole(1, 5) }, () => mouthOf(pick, whole)) : [];
    const { text } = textOf(language);
    return {
      layout,
      station: station!,
      direction,
      input: {
        direction,
        tableLength: station!.practice.tableLength,
        points: kerbPoints(layout, station!, direction, text),
        gates: kerbGates(layout, station!, direction),
        mouths,
        units: pick(['metric', 'imperial']),
        text,
        width: WIDTHS[size],
        size,
        look: pick(['ink', 'colour']),
        dimensions: next() < 0.7,
        note: next() < 0.7,
        ...(next() < 0.5 ? { roadWidth: whole(3, 14) } : {}),
        ...(station!.needs === undefined
          ? {}
          : { people: { handOut: needs.crew.handOut, pour: whole(0, 12), gel: whole(0, 4) } }),
      },
    };
  });
}

const mouthOf = (pick: Pick, whole: Whole): KerbMouth => {
  const from = whole(-110, 110);
  return {
    word: pick(['Mill Lane', 'Side street', 'Old Harbour Road and Quay Street']),
    kerb: pick(['near', 'far', 'both']),
    along: [from, from + whole(4, 24)],
  };
};

type Pick = <T>(list: readonly T[]) => T;
type Whole = (least: number, most: number) => number;

function layoutWith(pick: Pick, whole: Whole, next: () => number): Layout {
  const bend = whole(0, 90);
  const course = turtle(
    ORIGIN,
    [
      [90, 1960 + whole(0, 60)],
      [90 + pick([-bend, bend]), 2000],
    ],
    10,
  );
  const side = pick(['left', 'right'] as const);
  const serves = pick<readonly Served[]>([
    ['water'],
    ['sportsDrink', 'water'],
    ['gel', 'sportsDrink', 'water'],
    ['gel', 'water'],
    ['gel'],
  ]);
  const tables = { gel: whole(1, 17), sportsDrink: whole(1, 17), water: whole(1, 17) };
  const place = (along: number, off: number) => from(from(ORIGIN, 90, 2000 + along), side === 'left' ? 0 : 180, off);
  const points: PlanStation['points'] = Array.from({ length: whole(0, 9) }, (_, k) => ({
    kind: pick(KINDS),
    name: pick(['Life-ring', 'Truck access by the old lifeboat house', `Post ${k}`]),
    at: place(whole(-60, 60), whole(2, 14)),
  }));
  const layout = layoutOf(
    [course],
    [
      {
        on: { course: 'c', measure: 2000, side, offset: pick([3, 5, 40]) },
        serves,
        tables,
        boxes: whole(1, 16),
        points,
      },
    ],
  );
  const at = whole(-50, 50);
  const gate = {
    name: 'Farm drive',
    rule: 'keep-clear' as const,
    polygon: [place(at, 1), place(at + 4, 1), place(at + 4, 9)],
  };
  return planned(layout, { zones: next() < 0.4 ? [gate] : [] });
}

/** What is drawn of it. */
export const drawingOf = ({ input }: RandomStation): ReturnType<typeof layoutDrawing> => layoutDrawing(input);
