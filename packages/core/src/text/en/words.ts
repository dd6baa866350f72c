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
  sign: (serves) => {
    const drink = serves.includes('water') ? 'Water' : serves.includes('sportsDrink') ? 'Sports drink' : '';
    const gel = serves.includes('gel') ? (drink === '' ? 'Gel' : ' and gel') : '';
    return `${drink}${gel} ahead`;
  },
  left: 'left',
  right: 'right',
  and: 'and',
  or: 'or',
  to: 'to',
  quotes: ['“', '”'],
  found: {
    nothing: 'nothing',
    emptyText: 'an empty text',
    notNumber: 'not a number',
    tooLarge: 'a number too large to hold',
    nearZero: 'a number very near 0',
    object: 'an object',
    other: 'something else',
    digits: (count) => `a number of ${count} digits`,
    list: (count) => (count === 0 ? 'an empty list' : `a list of ${count}`),
  },
  count: (value) => String(value).replaceAll(/\B(?=(?:\d{3})+$)/gu, ','),
};
