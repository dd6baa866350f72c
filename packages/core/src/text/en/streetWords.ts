import type { StreetWords } from '../streetWords.ts';

export const streetWords: StreetWords = {
  between: (street, after, before) => `${street}, between ${after} and ${before}`,
  by: (street, other) => `${street}, by ${other}`,
  past: (street, after) => `${street}, past ${after}`,
  before: (street, before) => `${street}, before ${before}`,
  fromMap: (day) => (day === null ? 'from the map' : `from the map of ${day}`),
  credit: (credit, licence, day) =>
    `Streets: ${credit}${licence === null ? '' : `, ${licence}`}${day === null ? '' : `, map of ${day}`}`,
  across: 'across the road',
  unnamed: { street: 'side street', path: 'path', drive: 'driveway' },
};
