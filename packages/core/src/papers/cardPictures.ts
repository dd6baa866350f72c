/** The jobs of a water station as small drawings of 34 × 20 mm, for those who have never done them. Common practice, no source. */
import type { CardRole } from './cardRoles.ts';
import {
  bagOf,
  fallenCup,
  fromAbove,
  cupOf,
  jugOf,
  line,
  packet,
  person,
  pouring,
  runner,
  shape,
  tableOf,
  thick,
} from './cardFigures.ts';
import { palmPicture, rimPicture } from './cupPictures.ts';
import { type Html } from './html.ts';
import type { SheetText } from '../text/sheetText.ts';
import { mm, svgFrame, svgText } from './svg.ts';

const WIDTH = 34;
const HEIGHT = 20;
const GROUND = 19.4;

/** What a card shows beside where one stands. */
export type CardPicture =
  | 'carry'
  | 'gloves'
  | 'half'
  | 'stack'
  | 'jugs'
  | 'taps'
  | 'rim'
  | 'palm'
  | 'reachCup'
  | 'reachGel'
  | 'packet'
  | 'call'
  | 'rake'
  | 'bag';

const ground = line(`M0.4 ${GROUND + 0.2}H${WIDTH - 0.4}`);
const cupsFrom = (x: number, y: number, count: number): readonly Html[] =>
  Array.from({ length: count }, (_, k) => cupOf(x + 3.1 * k, y, 3.6)).flat();

/** Where the kerb lies in a picture of reaching; a runner is left of it, on the road. */
const KERB = 21;
const reach = (thing: readonly Html[]): readonly Html[] => [
  line(`M0.4 ${GROUND + 0.2}H${KERB}v-1.4H${WIDTH - 0.4}`),
  ...runner(7, GROUND),
  ...person(26, GROUND - 1.4, [
    [-7.4, 1],
    [1.6, 3.6],
  ]),
  ...thing,
];

/** An open hand, fingers up, with the cuff of its glove. */
const GLOVE =
  'M13 18.6v-3.4h8v3.4zM13.4 15.2c-0.6 -1.6 -3.6 -3.4 -4.4 -5c-0.4 -1.2 0.9 -1.7 1.8 -0.8l2.4 2.2v-7.4c0 -1.3 1.8 -1.3 1.9 0l0.2 4.6v-6c0 -1.3 1.9 -1.3 1.9 0v6l0.3 -5.2c0.1 -1.3 1.9 -1.2 1.9 0.1v5.6l0.4 -3.4c0.2 -1.2 1.8 -1 1.7 0.2c-0.1 2.8 0.4 6.6 -0.7 9.1z';

const PICTURES: Readonly<Record<Exclude<CardPicture, 'rim' | 'palm' | 'half'>, readonly Html[]>> = {
  carry: [
    ground,
    ...person(5, GROUND, [[4, 3]]),
    ...person(29, GROUND, [[-4, 3]]),
    shape(`M8.4 ${GROUND - 6.2}h17.2v1H8.4zm2 1l1.6 2.6h10l1.6 -2.6`),
  ],
  gloves: [shape(GLOVE)],
  stack: [
    ground,
    tableOf(2, GROUND, 30, 6),
    ...cupsFrom(6, GROUND - 6, 8),
    shape(`M3 ${GROUND - 10.5}h28v0.8H3z`),
    ...cupsFrom(9.1, GROUND - 10.6, 5),
  ],
  jugs: [
    ground,
    jugOf(2, GROUND, 9, true),
    jugOf(8.6, GROUND, 9, true),
    jugOf(15.2, GROUND, 9, true),
    line(`M23.4 ${GROUND}v-14`),
    jugOf(26, GROUND, 9, false),
  ],
  taps: [
    ground,
    tableOf(3, GROUND, 18, 6),
    shape(`M5 ${GROUND - 6.1}v-8h11v8zm11 -2.4h2.6v2h-1.2v-0.8h-1.4z`),
    shape(`M16.4 ${GROUND - 0.2}v-4.2l0.8 -1h1.6l0.8 1v4.2z`),
    ...person(27, GROUND, [
      [-6.6, 3.6],
      [-1.6, 3.8],
    ]),
  ],
  reachCup: reach(cupOf(18, GROUND - 7.6, 4)),
  reachGel: reach([packet(18.2, GROUND - 8.6, 4.4)]),
  packet: [
    packet(15, 12, 11),
    shape(
      'M33 13.6h-8c-2.6 -1.6 -5 -2.6 -7.6 -2.8c-1.6 0 -1.8 1.7 -0.4 1.9l2.6 0.5h-5.8c-1.4 0.1 -1.4 1.8 0 1.9l5.4 0.4c2 1.8 4.2 2.7 6.8 2.7h7',
    ),
  ],
  call: [
    // A head from the side with its mouth open.
    shape(
      'M5 18.8c0.4 -2 0.2 -3 -0.6 -4.2c-2.6 -4 -0.4 -9 4 -9c3.4 0 5 2.2 5.2 4.6l1 1.8l-1.2 0.5l0.2 1l-2.4 0.6l2.2 0.8c0 1.4 -0.8 1.8 -2.4 1.6l-0.6 2.3z',
    ),
    line('M16 12.4l2.6 -1.4M16.4 14.4h3M16 16.2l2.6 1.2'),
    shape('M21 2h11.4v9.4h-7l-4 3.2l1 -3.2h-1.4z'),
    svgText(26.7, 9, '!', { points: 18, bold: true, anchor: 'middle' }),
  ],
  rake: [
    line(`M0.4 ${GROUND + 0.2}H15v-1.4H${WIDTH - 0.4}`),
    fallenCup(2.2, GROUND),
    fallenCup(6.4, GROUND),
    fallenCup(10.8, GROUND),
    ...person(24, GROUND - 1.4, [
      [-3.6, 2.6],
      [-2, 4.4],
    ]),
    thick(`M26 ${GROUND - 11.6}L12.2 ${GROUND - 0.8}`),
    line(`M13.8 ${GROUND - 3.2}l-2.8 3.4`),
  ],
  bag: [
    ground,
    shape(`M3 ${GROUND}v-8.4h9v8.4z`),
    shape(`M2.4 ${GROUND - 8.4}c0 -2 10.2 -2 10.2 0l-0.8 1.8h-8.6z`),
    line(`M15 ${GROUND - 5}h4.4m-1.6 -1.4l1.6 1.4l-1.6 1.4`),
    bagOf(26, GROUND),
  ],
};

/** How full a cup is poured, 0 to 1, and how that is written. */
const filled = (share: number): readonly Html[] => {
  const level = GROUND - 11 * share;
  return [
    ...cupOf(7, GROUND, 11, share),
    pouring(14.2, 11, 11),
    line('M11.6 7.4c-2.4 0.2 -4 1.2 -4.2 6.2'),
    line(`M12.4 ${mm(level)}h5m-3.4 -1.4l-1.6 1.4l1.6 1.4`),
    svgText(19, level + 1.2, percentOf(share) === null ? '1/2' : `${percentOf(share)} %`, { points: 10, bold: true }),
  ];
};

/** A share in whole percent, `null` for half. */
export const percentOf = (share: number): string | null => {
  const percent = Math.round(share * 100);
  return percent === 50 ? null : String(percent);
};

/** A drawing with what it shows in words; `fill`: how full cups are, 0 to 1. */
export function cardPicture(kind: CardPicture, label: string, fill: number): Html {
  if (kind === 'rim') return rimPicture(label);
  if (kind === 'palm') return palmPicture(label);
  const content = kind === 'half' ? filled(fill) : PICTURES[kind];
  return svgFrame(WIDTH, HEIGHT, label, content, kind === 'reachCup' || kind === 'reachGel' ? 'hold reach' : kind);
}

/** Where the road's edge lies, from the side of the tables. */
const EDGE = 11.6;

/** Where each role stands, from above: along the road, and back from its edge. */
const BEHIND = [
  [13, 9.3],
  [18.5, 9.3],
  [24, 9.3],
] as const;
const STANDS: Readonly<Record<CardRole, readonly (readonly [x: number, back: number])[]>> = {
  setUp: BEHIND,
  refill: BEHIND,
  taps: BEHIND,
  cups: BEHIND.map(([x]) => [x, 1.8]),
  gel: [
    [2.8, 1.8],
    [6.3, 1.8],
  ],
  clean: [
    [31.6, 1.8],
    [29, 5.4],
  ],
};

export interface Stand {
  readonly role: CardRole;
  /** Of the tables, as runners see it. */
  readonly side: 'left' | 'right' | 'unclear';
  /** All of the station. */
  readonly roles: readonly CardRole[];
  readonly text: SheetText;
}

/**
 * Where a role stands, from above: black discs are the reader, white ones the others. Runners go from left to right,
 * so tables on their left lie above the road; where the side is not clear, no arrow tells where runners come from.
 */
export function standPicture({ role, side, roles, text }: Stand): Html {
  const above = side === 'left';
  const y = (back: number): number => (above ? EDGE - back : HEIGHT - EDGE + back);
  const middle = above ? (EDGE + HEIGHT) / 2 : (HEIGHT - EDGE) / 2;
  const box = (x: number, width: number, word: string): Html[] => {
    const foot = (y(3.6) + y(7.2)) / 2 + 1.15;
    return [
      shape(`M${mm(x)} ${mm(y(3.6))}h${width}V${mm(y(7.2))}h${-width}z`),
      ...(word === '' ? [] : [svgText(x + width / 2, foot, word, { points: 9, anchor: 'middle' })]),
    ];
  };
  // While tables are set up nobody else pours there yet.
  const others = roles.filter((one) => one !== role && STANDS[one] !== STANDS[role] && one !== 'setUp');
  const { runners } = text.captain.drawing;
  return svgFrame(
    WIDTH,
    HEIGHT,
    text.card.roles[role].stand,
    [
      line(`M0.4 ${mm(y(0))}H${WIDTH - 0.4}`),
      ...(roles.includes('gel') ? box(0.8, 7.6, text.frame.items.gel) : []),
      ...(roles.includes('refill') || roles.includes('taps') ? box(10.4, 16.4, text.card.tables) : []),
      ...box(30.6, 2.4, ''),
      ...(side === 'unclear' ? [] : [thick(`M2 ${mm(middle)}h7m-2 -1.6l2 1.6l-2 1.6`)]),
      svgText(12, middle + 1.15, runners, { points: 9 }),
      ...others.flatMap((one) => STANDS[one].map(([x, back]) => fromAbove(x, y(back), false))),
      ...STANDS[role].map(([x, back]) => fromAbove(x, y(back), true)),
    ],
    'stand',
  );
}
