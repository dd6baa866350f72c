import type { StreetWords } from '../streetWords.ts';

export const streetWords: StreetWords = {
  between: (street, after, before) => `${street}, entre ${after} y ${before}`,
  by: (street, other) => `${street}, junto a ${other}`,
  past: (street, after) => `${street}, después de ${after}`,
  before: (street, before) => `${street}, antes de ${before}`,
  fromMap: (day) => (day === null ? 'según el mapa' : `según el mapa del ${day}`),
  credit: (credit, licence, day) =>
    `Calles: ${credit}${licence === null ? '' : `, ${licence}`}${day === null ? '' : `, mapa del ${day}`}`,
  across: 'al otro lado',
  unnamed: { street: 'calle lateral', path: 'camino', drive: 'entrada de vehículos' },
};
