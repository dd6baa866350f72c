import type { FrameText } from '../frameText.ts';
import { supplyWords } from './supplyWords.ts';
import { words } from './words.ts';

export const frame: FrameText = {
  version: (version) => `Version ${version}`,
  noVersion: 'Version not stated',
  printed: (at) => `Printed ${at}`,
  destroy: 'Destroy older copies',
  page: 'Page',
  of: 'of',
  noName: 'A plan without a name',
  toFill: 'to be filled in:',
  caution: 'A planning aid: local codes, the road authority, the police and licensed practitioners decide.',
  station: 'Station',
  items: words.items,
  served: words.served,
  points: words.points,
  supplies: supplyWords,
  left: words.left,
  right: words.right,
  side: 'Side',
  sideUnclear: 'side not clear: ask before setting up',
  count: words.count,
};
