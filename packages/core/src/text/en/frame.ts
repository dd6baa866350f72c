import type { FrameText } from '../frameText.ts';
import { streetWords } from './streetWords.ts';
import { supplyWords } from './supplyWords.ts';
import { words } from './words.ts';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

export const frame: FrameText = {
  version: (version) => `Version ${version}`,
  noVersion: 'No version',
  printed: (at) => `Printed ${at}`,
  destroy: 'Destroy older copies',
  page: 'Page',
  of: 'of',
  noName: 'Unnamed plan',
  toFill: 'fill in:',
  caution: 'A planning aid: local codes, the road authority, the police and licensed practitioners decide.',
  station: 'Station',
  items: words.items,
  served: words.served,
  points: words.points,
  supplies: supplyWords,
  street: streetWords,
  left: words.left,
  right: words.right,
  side: 'Side',
  sideUnclear: 'side not clear: ask before setting up',
  date: (weekday, day, month, year) => `${WEEKDAYS[weekday]} ${day} ${MONTHS[month]} ${year}`,
  count: words.count,
};
