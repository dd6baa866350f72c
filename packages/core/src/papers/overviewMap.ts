/**
 * The map of all courses, north up unless a turn shows them much larger: lines with arrows and distance marks, each station's number on its side of the
 * road, start and finish, a scale bar. East and north of the middle, metres, by the project's own frame.
 */
import type { FeatureCollection } from 'geojson';
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { eastNorth, project } from '../geodesy/frame.ts';
import type { Layout } from '../layout/layout.ts';
import type { Units } from '../plan/plan.ts';
import { metres } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Place, backdrop, thinned } from './backdrop.ts';
import { type GroundFrame, creditOf, groundDrawing, namedStreets } from './groundDrawing.ts';
import { type Html, html } from './html.ts';
import { numberOf } from '../layout/layout.ts';
import { northAndScale } from './overviewScale.ts';
import { streetsByName } from './overviewStreets.ts';
import { mm, svgFrame, svgPath, svgText, through } from './svg.ts';
import { type Box, POINT, overlap, textWidth } from './textBox.ts';

export interface OverviewMapInput {
  /** The map of the ground, where the plan has one, is drawn faint behind. */
  readonly layout: Pick<Layout, 'courses' | 'stations' | 'ground'>;
  readonly units: Units;
  readonly text: SheetText;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly context?: FeatureCollection;
}

interface View {
  readonly on: (at: LonLat) => Place;
  /** Millimetres for a metre. */
  readonly scale: number;
  /** By how many degrees the map is turned clockwise: north is so far from up. */
  readonly turnDeg: number;
  /** One line, or more where gaps are skipped. */
  readonly lines: (course: Course) => Place[][];
}

const PAD = 11;
const SIZE = 9;
const RADIUS = 2.7;
/** Lines of the first course, the second and so on. */
export const DASHES: readonly string[] = [
  '',
  ' stroke-dasharray="2.4 1.2"',
  ' stroke-dasharray="0.9 0.9"',
  ' stroke-dasharray="4 1 0.9 1"',
];

export const dashOf = (k: number): string => DASHES[k % DASHES.length]!;

/** Everything about the middle vertex of the first course: north is true there, and 1 mm off at most on paper anywhere on a day's run. */
function viewOf({ layout: { courses, stations }, width, height }: OverviewMapInput): View {
  const { lon, lat } = courses[0]!.course;
  const middle = Math.floor(lon.length / 2);
  const origin: LonLat = [wrapDegrees(lon[middle]!), lat[middle]!];
  const spots = new Map(courses.map(({ course }) => [course.id, spotsOf(course, origin)]));
  const pins = stations.map(({ at }) => eastNorth(origin, at));
  const all = [
    ...[...spots.values()].map(({ x, y }) => ({ x, y })),
    { x: pins.map(({ east }) => east), y: pins.map(({ north }) => north) },
  ];
  const { turnDeg, scale, middle: centre } = bestTurn(all, width - 2 * PAD, height - 2 * PAD);
  const turned = turnedBy(turnDeg);
  const place = (x: number, y: number): Place => {
    const [across, up] = turned(x, y);
    return [width / 2 + (across - centre[0]) * scale, height / 2 - (up - centre[1]) * scale];
  };
  const on = (at: LonLat): Place => {
    const { east, north } = eastNorth(origin, at);
    return place(east, north);
  };
  const lines = (course: Course): Place[][] => {
    const { x, y } = spots.get(course.id)!;
    const places = Array.from(x, (one, k) => place(one, y[k]!));
    // No line runs over a skipped gap.
    const cuts = [0, ...course.skips.map(({ vertex }) => vertex + 1), places.length];
    return cuts.slice(1).map((end, k) => thinned(places.slice(cuts[k], end)));
  };
  return { scale, turnDeg, on, lines };
}

/** How a turn of so many degrees clockwise moves a place, east and north of the middle. */
function turnedBy(turnDeg: number): (x: number, y: number) => readonly [number, number] {
  const [sin, cos] = [Math.sin((turnDeg * Math.PI) / 180), Math.cos((turnDeg * Math.PI) / 180)];
  return (x, y) => [x * cos + y * sin, y * cos - x * sin];
}

/** A map is turned only where the courses come out so many times larger: people read maps with north up. */
const WORTH_TURNING = 1.25;
const TURN_STEP = 5;

interface Turn {
  readonly turnDeg: number;
  readonly scale: number;
  readonly middle: readonly [number, number];
}

/** North up, or the turn with which the courses fill the frame best where that is worth it. */
function bestTurn(
  all: readonly { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> }[],
  width: number,
  height: number,
): Turn {
  const at = (turnDeg: number): Turn => {
    const turned = turnedBy(turnDeg);
    let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { x, y } of all)
      for (let k = 0; k < x.length; k++) {
        const [across, up] = turned(x[k]!, y[k]!);
        [x0, x1, y0, y1] = [Math.min(x0, across), Math.max(x1, across), Math.min(y0, up), Math.max(y1, up)];
      }
    const scale = Math.min(width / Math.max(x1 - x0, 100), height / Math.max(y1 - y0, 100));
    return { turnDeg, scale, middle: [(x0 + x1) / 2, (y0 + y1) / 2] };
  };
  const up = at(0);
  // As near to north up as may be: a turn of 85° either way shows what one of 95° would.
  const turns = Array.from({ length: 180 / TURN_STEP }, (_, k) => (k + 1) * TURN_STEP - 90).filter(
    (turn) => turn !== 0,
  );
  const best = turns.map(at).reduce((a, b) => (b.scale > a.scale * 1.001 ? b : a), up);
  return best.scale >= up.scale * WORTH_TURNING ? best : up;
}

function spotsOf({ lon, lat }: Course, origin: LonLat): { readonly x: Float64Array; readonly y: Float64Array } {
  const [x, y] = [new Float64Array(lon.length), new Float64Array(lon.length)];
  project(origin, lon, lat, 0, lon.length, x, y);
  return { x, y };
}

/** The map; a plan without courses has none. */
export function overviewMap(whole: OverviewMapInput): Html {
  const { layout, text, width, context } = whole;
  const ground = layout.ground?.ground;
  const credit = creditOf(ground?.source, width, text);
  const height = whole.height - credit.height;
  const input = { ...whole, height };
  const view = viewOf(input);
  const lines = layout.courses.map(({ course }) => view.lines(course));
  // What lies over the frame is cut: nothing is written there.
  const beyond: readonly Box[] = [
    { x: -99, y: -99, width: 100, height: height + 198 },
    { x: width - 1, y: -99, width: 100, height: height + 198 },
    { x: -99, y: -99, width: width + 198, height: 100 },
    { x: -99, y: height - 1, width: width + 198, height: 100 },
  ];
  const taken: Box[] = [
    ...beyond,
    { x: 0, y: height - 12, width: 50, height: 12 },
    { x: width - 10, y: 0, width: 10, height: 15 },
  ];
  const numbers = stationNumbers(input, view, taken);
  const marks = layout.courses.slice(0, 1).flatMap(({ course }) => distanceMarks(course, input, view, taken));
  const written: [string, Place][] = [];
  const ends = layout.courses.flatMap(({ course }) => endWords(course, input, view, taken, written));
  const frame: GroundFrame = { on: view.on, scale: view.scale, width, height };
  const content = [
    html`<clipPath id="overview-map"><rect x="0" y="0" width="${mm(width)}" height="${mm(height)}"/></clipPath>`,
    html`<g clip-path="url(#overview-map)">${context === undefined ? [] : backdrop(context, view.on)}${ground === undefined ? [] : groundDrawing(ground, frame)}</g>`,
    ...lines
      .toReversed()
      .map((parts, k) =>
        svgPath(
          parts.map(through).join(''),
          `fill="none" stroke="#000" stroke-width="0.8" stroke-linejoin="round"${dashOf(lines.length - 1 - k)}`,
        ),
      ),
    ...lines.slice(0, 1).flat().flatMap(arrows),
    ...marks,
    ...ends,
    ...numbers,
    ...(ground === undefined ? [] : streetsByName(namedStreets(ground, frame), frame, lines.flat(), taken)),
    northAndScale(view, input),
    html`<rect x="0.2" y="0.2" width="${mm(width - 0.4)}" height="${mm(height - 0.4)}" fill="none" stroke="#000" stroke-width="0.4"/>`,
    ...credit.at(whole.height),
  ];
  return svgFrame(width, whole.height, text.lists.overview.map, content, 'overview-map');
}

/** Arrowheads in the running direction, one every 30 mm of paper. */
function arrows(line: readonly Place[]): Html[] {
  let run = 0;
  let next = 12;
  return line.slice(1).flatMap(([x, y], k) => {
    const [x0, y0] = line[k]!;
    run += Math.hypot(x - x0, y - y0);
    if (run < next) return [];
    next = run + 30;
    return [
      html`<path d="M-1.7 -1.5L1.5 0L-1.7 1.5Z" fill="#000" transform="translate(${mm(x)} ${mm(y)}) rotate(${mm((Math.atan2(y - y0, x - x0) * 180) / Math.PI)})"/>`,
    ];
  });
}

/** Each number in a ring on the station's side, square to the course, as near as there is room; a line leads to the pin. */
function stationNumbers(
  { layout: { stations }, width, height }: OverviewMapInput,
  { on, turnDeg }: View,
  taken: Box[],
): Html[] {
  return stations.map((station) => {
    const [x, y] = on(station.at);
    const lead = station.directions[0];
    const turn = lead?.side === 'left' ? -90 : 90;
    const choices = [7, 10, 13, 17].flatMap((far) =>
      [0, 25, -25, 50, -50].map((bend) => {
        const angle = (((lead?.azimuthDeg ?? 0) + turnDeg + turn + bend) * Math.PI) / 180;
        return [x + Math.sin(angle) * far, y - Math.cos(angle) * far] as const;
      }),
    );
    const boxOf = ([cx, cy]: Place): Box => ({
      x: cx - RADIUS - 0.4,
      y: cy - RADIUS - 0.4,
      width: 2 * RADIUS + 0.8,
      height: 2 * RADIUS + 0.8,
    });
    const free = choices.find(
      (one) =>
        one[0] > 4 &&
        one[0] < width - 4 &&
        one[1] > 4 &&
        one[1] < height - 4 &&
        !taken.some((box) => overlap(box, boxOf(one))),
    );
    const [cx, cy] = free ?? choices[0]!;
    taken.push(boxOf([cx, cy]));
    return html`<g data-station="${station.id}">${svgPath(`M${mm(x)} ${mm(y)}L${mm(cx)} ${mm(cy)}`, 'stroke="#000" stroke-width="0.35"')}<circle cx="${mm(x)}" cy="${mm(y)}" r="0.8" fill="#000"/>${ring(cx, cy, numberOf(station), lead?.side === 'unclear')}</g>`;
  });
}

/** A number in a ring; dashed where the side is not clear. */
export const ring = (x: number, y: number, number: number, dashed: boolean = false): Html =>
  html`<ellipse cx="${mm(x)}" cy="${mm(y)}" rx="${RADIUS + (number > 99 ? 1 : 0)}" ry="${RADIUS}" fill="#fff" stroke="#000" stroke-width="0.5"${dashed ? html` stroke-dasharray="0.8 0.6"` : ''}/>${svgText(x, y + SIZE * POINT * 0.36, String(number), { points: SIZE, bold: true, anchor: 'middle' })}`;

/** A tick each km or mile, a figure each fifth. */
function distanceMarks(
  course: Course,
  { units }: OverviewMapInput,
  { on, scale, turnDeg }: View,
  taken: Box[],
): Html[] {
  const unit = units === 'metric' ? 'km' : 'mi';
  const step = metres(1, unit);
  const first = Math.floor(startMeasure(course) / step) + 1;
  const count = Math.floor((courseLength(course) - 1) / step) - first + 1;
  return Array.from({ length: count }, (_, k) => first + k).flatMap((number) => {
    const ground = pointAt(course, number * step);
    if (ground === null || (step * scale < 1.5 && number % 5 !== 0)) return [];
    const [x, y] = on(ground.at);
    const across = ((ground.azimuthDeg + turnDeg + 90) * Math.PI) / 180;
    const [dx, dy] = [Math.sin(across), -Math.cos(across)];
    const half = number % 5 === 0 ? 1.5 : 0.8;
    const tick = svgPath(
      `M${mm(x - dx * half)} ${mm(y - dy * half)}L${mm(x + dx * half)} ${mm(y + dy * half)}`,
      `stroke="#000" stroke-width="${number % 5 === 0 ? 0.6 : 0.35}"`,
    );
    if (number % 5 !== 0) return [tick];
    const word = `${number} ${unit}`;
    return [
      tick,
      ...placeWord(
        word,
        [x, y],
        [
          [-dx, -dy],
          [dx, dy],
        ],
        taken,
        false,
      ),
    ];
  });
}

/** Start and finish; where another course's stands next to it the word is written once. */
const endWords = (
  course: Course,
  { text }: OverviewMapInput,
  { on }: View,
  taken: Box[],
  written: [string, Place][],
): Html[] =>
  (
    [
      [startMeasure(course), text.lists.overview.start],
      [courseLength(course), text.lists.overview.finish],
    ] as const
  ).flatMap(([measure, word]) => {
    const [x, y] = on(pointAt(course, measure)!.at);
    const again = written.some(([one, [wx, wy]]) => one === word && Math.hypot(x - wx, y - wy) < 15);
    written.push([word, [x, y]]);
    return [
      html`<rect x="${mm(x - 1)}" y="${mm(y - 1)}" width="2" height="2" fill="#fff" stroke="#000" stroke-width="0.6"/>`,
      ...(again
        ? []
        : placeWord(
            word,
            [x, y],
            [
              [1, -0.3],
              [-1, -0.3],
              [1, 0.7],
              [-1, 0.7],
              [0, -1],
              [0, 1],
            ],
            taken,
            true,
          )),
    ];
  });

/** A word beside a place, towards the first direction with room; one without room is left out, for its mark stands. */
function placeWord(word: string, [x, y]: Place, towards: readonly Place[], taken: Box[], bold: boolean): Html[] {
  const size = { width: textWidth(word, SIZE, bold), height: SIZE * POINT };
  const boxes = [2.4, 5].flatMap((far) =>
    towards.map(([dx, dy]): Box => ({
      x: x + dx * (far + size.width / 2) - size.width / 2,
      y: y + dy * (far + size.height / 2) - size.height / 2,
      ...size,
    })),
  );
  const box = boxes.find((one) => !taken.some((other) => overlap(one, other)));
  if (box === undefined) return [];
  taken.push(box);
  return [svgText(box.x, box.y + size.height * 0.8, word, { points: SIZE, bold, halo: true })];
}
