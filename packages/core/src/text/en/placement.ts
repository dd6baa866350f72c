import type { PlacementText } from '../listsText.ts';

export const placement: PlacementText = {
  title: 'Placement list',
  how: 'Course order. Walk with the runners. A wheel runs along the kerb from one chalk mark at each station: the upstream end of its first drink table. Write what the wheel shows; tick what stands.',
  margin: '± is how far off the kerb may bend the wheel’s way. It leaves out the wheel’s own error: calibrate it.',
  course: (name) => `Course: ${name}`,
  otherDirection: 'other direction',
  sameTables: 'The same tables as in the lead direction; the sign and the trash drop are this direction’s own.',
  chalk: 'Chalk mark',
  peg: 'What',
  distance: 'Course distance',
  before: 'From the one before',
  fromChalk: 'From the chalk mark',
  position: 'Latitude, longitude',
  wheeled: 'Wheeled',
  done: 'Done',
  begins: (what) => `${what}, from here`,
  ends: (what) => `${what}, to here`,
  byHand: 'placed by hand in the plan',
  noPlace: 'no place: off the course',
  why: 'Why',
  offCourse: (stations) => `No race passes these stations, so nothing is listed for them: ${stations}.`,
};
