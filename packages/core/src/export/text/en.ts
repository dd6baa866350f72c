/** The papers in English. */
import type { SheetText } from './text.ts';

export const en: SheetText = {
  language: 'en',
  name: 'English',
  frame: {
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
    items: { sign: 'Sign', gel: 'Gel', sportsDrink: 'Sports drink', water: 'Water', handOut: 'Hand-out line', trash: 'Trash' },
    served: { gel: 'gel', sportsDrink: 'sports drink', water: 'water' },
    points: { drop: 'Supplies drop', access: 'Truck access', medical: 'First aid', toilets: 'Toilets', radio: 'Radio', other: 'Point' },
    left: 'left',
    right: 'right',
    side: 'Side',
    sideUnclear: 'side not clear: ask before setting up',
  },
  captain: {
    title: 'Captain’s sheet',
  },
  card: {
    title: 'Volunteer card',
  },
  lists: {
    placementTitle: 'Placement list',
  },
};
