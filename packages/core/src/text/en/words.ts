import type { Words } from '../words.ts';

export const words: Words = {
  items: {
    sign: 'Sign',
    gel: 'Gel',
    sportsDrink: 'Sports drink',
    water: 'Water',
    handOut: 'Hand-out line',
    trash: 'Trash',
  },
  served: { gel: 'gel', sportsDrink: 'sports drink', water: 'water' },
  points: {
    drop: 'Supplies drop',
    access: 'Truck access',
    medical: 'First aid',
    toilets: 'Toilets',
    radio: 'Radio',
    other: 'Point',
  },
  left: 'left',
  right: 'right',
  and: 'and',
  or: 'or',
  to: 'to',
  quotes: ['“', '”'],
  count: (value) => String(value).replaceAll(/\B(?=(?:\d{3})+$)/gu, ','),
};
