/**
 * The map of all courses, north up unless a turn shows them much larger: lines with arrows and distance marks, each station's number on its side of the
 * road, start and finish, a scale bar. East and north of the middle, metres, by the project's own frame.
 */
import type { FeatureCollection } from 'geojson';
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import type { Layout } from '../layout/layout.ts';
import type { Units } from '../plan/plan.ts';
import { metres } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Place, backdrop } from './backdrop.ts';
import { type GroundFrame, creditOf, groundDrawing, namedStreets } from './groundDrawing.ts';
import { type Html, html } from './html.ts';
import { numberOf } from '../layout/layout.ts';
import { northAndScale } from './overviewScale.ts';
import { streetsByName } from './overviewStreets.ts';
import { type View, viewOf } from './overviewView.ts';
import { mm, svgFrame, svgPath, svgText, through } from './svg.ts';
import { stepsAlong } from './stationMapWords.ts';
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
  const onCourses = lines.flat().flatMap(beads);
  const numbers = stationNumbers(input, view, taken);
  taken.push(...layout.courses.flatMap(({ course }) => endSquares(course, view)));
  const room: Room = { taken, onCourses };
  const written: [string, Place][] = [];
  const ends = layout.courses.flatMap(({ course }) => endWords(course, input, view, room, written));
  const marks = layout.courses.slice(0, 1).flatMap(({ course }) => distanceMarks(course, input, view, room));
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
    ...(ground === undefined ? [] : streetsByName(namedStreets(ground, frame), frame, onCourses, taken)),
    northAndScale(view, input),
    html`<rect x="0.2" y="0.2" width="${mm(width - 0.4)}" height="${mm(height - 0.4)}" fill="none" stroke="#000" stroke-width="0.4"/>`,
    ...credit.at(whole.height),
  ];
  return svgFrame(width, whole.height, text.lists.overview.map, content, 'overview-map');
}

/** Where words may stand: on none of what is taken, and on no course where another place is free. */
interface Room {
  readonly taken: Box[];
  readonly onCourses: readonly Box[];
}

/** Small boxes along a line, which words keep off. */
const beads = (line: readonly Place[]): Box[] =>
  stepsAlong(line, 1.2).map(([x, y]) => ({ x: x - 0.6, y: y - 0.6, width: 1.2, height: 1.2 }));

const END = 1.3;

/** The squares of start and finish. */
const endSquares = (course: Course, { on }: View): Box[] =>
  [startMeasure(course), courseLength(course)].map((measure) => {
    const [x, y] = on(pointAt(course, measure)!.at);
    return { x: x - END, y: y - END, width: 2 * END, height: 2 * END };
  });

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
function distanceMarks(course: Course, { units }: OverviewMapInput, { on, scale, turnDeg }: View, room: Room): Html[] {
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
        room,
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
  room: Room,
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
            room,
            true,
          )),
    ];
  });

/** A word beside a place, towards the first direction with room; one without room is left out, for its mark stands. */
function placeWord(
  word: string,
  [x, y]: Place,
  towards: readonly Place[],
  { taken, onCourses }: Room,
  bold: boolean,
): Html[] {
  const size = { width: textWidth(word, SIZE, bold), height: SIZE * POINT };
  const boxes = [2.4, 5].flatMap((far) =>
    towards.map(([dx, dy]): Box => ({
      x: x + dx * (far + size.width / 2) - size.width / 2,
      y: y + dy * (far + size.height / 2) - size.height / 2,
      ...size,
    })),
  );
  const free = boxes.filter((one) => !taken.some((other) => overlap(one, other)));
  const box = free.find((one) => !onCourses.some((other) => overlap(one, other))) ?? free[0];
  if (box === undefined) return [];
  taken.push(box);
  return [svgText(box.x, box.y + size.height * 0.8, word, { points: SIZE, bold, halo: true })];
}
