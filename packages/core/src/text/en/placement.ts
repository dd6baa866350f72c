import type { PlacementText } from '../listsText.ts';

export const placement: PlacementText = {
  title: 'Placement list',
  how: 'Listed in course order: walk in the runners’ direction. At each station make a chalk mark on the kerb where the first drink table begins (the end that runners reach first), set a measuring wheel to 0 there and roll it along the kerb. Write down what the wheel shows; tick each item once it stands.',
  margin:
    '± is how far the reading may be off because the kerb bends. It does not include the wheel’s own error: calibrate the wheel first.',
  course: (name) => `Course: ${name}`,
  otherDirection: 'other direction',
  sameTables:
    'These are the tables listed before, passed in another direction; only the sign and the trash boxes are this direction’s own.',
  chalk: 'Chalk mark',
  peg: 'What',
  distance: 'Course distance',
  before: 'From previous item',
  fromChalk: 'From the chalk mark',
  position: 'Latitude, longitude',
  wheeled: 'Wheel reading',
  done: 'Done',
  begins: (what) => `${what}, from here`,
  ends: (what) => `${what}, to here`,
  byHand: 'placed by hand in the plan',
  noPlace: 'no position: off the course',
  why: 'Why',
  offCourse: (stations) => `No race passes these stations, so nothing is listed for them: ${stations}.`,
};
