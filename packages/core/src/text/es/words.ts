import type { Words } from '../words.ts';

export const words: Words = {
  items: {
    sign: 'Cartel',
    gel: 'Gel',
    sportsDrink: 'Bebida isotónica',
    water: 'Agua',
    handOut: 'Línea de entrega',
    trash: 'Basura',
  },
  served: { gel: 'gel', sportsDrink: 'bebida isotónica', water: 'agua' },
  points: {
    drop: 'Entrega de material',
    access: 'Acceso de camiones',
    medical: 'Primeros auxilios',
    toilets: 'Aseos',
    radio: 'Radio',
    other: 'Punto',
  },
  sign: (serves) => {
    const drink = serves.includes('water') ? 'Agua' : serves.includes('sportsDrink') ? 'Isotónica' : '';
    const gel = serves.includes('gel') ? (drink === '' ? 'Gel' : ' y gel') : '';
    return `${drink}${gel} más adelante`;
  },
  left: 'izquierda',
  right: 'derecha',
  and: 'y',
  or: 'o',
  to: 'a',
  quotes: ['«', '»'],
  found: {
    nothing: 'nada',
    emptyText: 'un texto vacío',
    notNumber: 'algo que no es un número',
    tooLarge: 'un número demasiado grande',
    nearZero: 'un número muy cercano a 0',
    object: 'un objeto',
    other: 'otra cosa',
    digits: (count) => `un número de ${count} cifras`,
    list: (count) => (count === 0 ? 'una lista vacía' : `una lista de ${count}`),
  },
  // Spaces from five digits on: Ortografía de la lengua española, 2010 (from memory).
  count: (value) => (value < 10_000 ? String(value) : String(value).replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202F')),
};
