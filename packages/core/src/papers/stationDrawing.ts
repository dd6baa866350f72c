/** The drawing of one station: what its layout, its race day and its ground give a drawing, and the drawing by itself. */
import type { Analysis } from '../analyse.ts';
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { isStationLayout } from '../layout/shapes.ts';
import { isAnalysis } from '../review/shapes.ts';
import { textOf } from '../text/languages.ts';
import type { SheetText } from '../text/sheetText.ts';
import type { UnitSystem } from '../units.ts';
import { type Shape, aFlag, aText, count, finite, maybe, oneOf, recordOf, want } from '../wants.ts';
import { dayOf } from './captainFacts.ts';
import { FONT, FONT_FACE } from './font/font.ts';
import { html } from './html.ts';
import { type DrawingInput, type DrawingLook, type DrawingSize, layoutDrawing } from './layoutDrawing.ts';
import { kerbGates, kerbMouths, kerbPoints } from './stationGround.ts';

/** How a station is drawn. */
export interface StationDrawingOptions {
  /** For a column of a page, half a page of paper, or a page laid across. Absent: half. */
  readonly size?: DrawingSize;
  /** Black on white, or in colour. Absent: black. */
  readonly look?: DrawingLook;
  /** BCP 47. Absent: the plan's. */
  readonly language?: string;
  /** Absent: the plan's. */
  readonly units?: UnitSystem;
  /** Which of the station's directions, from 0. Absent: the lead's. */
  readonly direction?: number;
  /** Millimetres, at least 60. Absent: 84, 186 or 269 by the size. */
  readonly width?: number;
  /** Lines that say how long each stretch is. Absent: true. */
  readonly dimensions?: boolean;
  /** What the signs of the drawing mean, under it. Absent: true. */
  readonly note?: boolean;
}

/** A drawing of a station by itself. */
export interface StationDrawing {
  /** An SVG document that carries its font; all that it says is escaped. */
  readonly svg: string;
  /** Millimetres. */
  readonly width: number;
  /** Millimetres. */
  readonly height: number;
}

/** Millimetres. */
const WIDTHS: Readonly<Record<DrawingSize, number>> = { panel: 84, half: 186, full: 269 };

const isOptions: Shape = recordOf<StationDrawingOptions>('options', {
  size: maybe(oneOf('panel', 'half', 'full')),
  look: maybe(oneOf('ink', 'colour')),
  language: maybe(aText),
  units: maybe(oneOf('metric', 'imperial')),
  direction: maybe(count),
  width: maybe(finite),
  dimensions: maybe(aFlag),
  note: maybe(aFlag),
});

/** What a station gives its drawing: points, gates, people and the road's width, where the plan knows them. */
export function drawingInput(
  analysis: Analysis,
  station: StationLayout,
  direction: LaidDirection,
  { text, units, width }: { readonly text: SheetText; readonly units: UnitSystem; readonly width: number },
): DrawingInput {
  const day = dayOf(analysis, station);
  const road = station.station.width;
  return {
    direction,
    tableLength: station.practice.tableLength,
    points: kerbPoints(analysis, station, direction, text),
    gates: kerbGates(analysis, station, direction),
    mouths: kerbMouths(analysis, direction, text),
    ...(day === null || !direction.lead ? {} : { people: day.crew }),
    ...(road === undefined ? {} : { roadWidth: road }),
    units,
    text,
    width,
  };
}

/**
 * One station along its kerb as a picture: road, sign, tables, who hands out and who pours, trash boxes, points and gates, drawn
 * straight and to scale along the kerb, runners from left to right. Labels never lie on each other nor leave the picture: what has no
 * room for its words has a number, and its words in a legend below. `station`: one of the analysis. Lengths in millimetres; throws a
 * RangeError for a width under 60 and for a direction that the station does not have.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { stationDrawing } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const [station] = result.value.stations;
 * const drawing = station && stationDrawing(result.value, station, { size: 'full', look: 'colour' });
 * drawing?.svg.startsWith('<svg'); // → true
 * drawing?.width; // → 269
 * ```
 */
export function stationDrawing(
  analysis: Analysis,
  station: StationLayout,
  options: StationDrawingOptions = {},
): StationDrawing {
  want('stationDrawing', 'analysis', isAnalysis, analysis);
  want('stationDrawing', 'station', isStationLayout, station);
  want('stationDrawing', 'options', isOptions, options);
  const { size = 'half', look = 'ink', dimensions = true, note = true } = options;
  const { directions } = station;
  const index =
    options.direction ??
    Math.max(
      0,
      directions.findIndex(({ lead }) => lead),
    );
  const direction = directions[index];
  if (direction === undefined)
    throw new RangeError(
      `stationDrawing expects a direction of the station, of which it has ${directions.length}; found ${index}`,
    );
  const { text } = textOf(options.language ?? analysis.plan.language);
  const width = options.width ?? WIDTHS[size];
  const input = drawingInput(analysis, station, direction, {
    text,
    units: options.units ?? analysis.plan.units,
    width,
  });
  const { svg, height } = layoutDrawing({ ...input, size, look, dimensions, note });
  return { svg: alone(svg.html), width, height };
}

const STYLE = `${FONT_FACE}svg { font-family: ${FONT}; font-kerning: none; font-variant-ligatures: none; text-rendering: geometricPrecision; background: #fff; }`;

/** A drawing with the font that it is laid out by. */
const alone = (svg: string): string => {
  const head = svg.indexOf('>') + 1;
  return `${svg.slice(0, head)}${html`<style>${{ html: STYLE }}</style>`.html}${svg.slice(head)}`;
};
