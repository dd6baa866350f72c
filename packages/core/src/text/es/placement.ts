import type { PlacementText } from '../listsText.ts';

export const placement: PlacementText = {
  title: 'Lista de colocación',
  how: 'En el orden del recorrido. Camine en el sentido de los corredores. La rueda va por el bordillo desde una marca de tiza en cada puesto: el primer extremo de su primera mesa de bebida. Anote lo que marca la rueda; tache lo que ya está.',
  margin:
    '± es cuánto puede desviarse el bordillo del camino de la rueda. No incluye el error de la propia rueda: calíbrela.',
  course: (name) => `Recorrido: ${name}`,
  otherDirection: 'otro sentido',
  sameTables: 'Las mismas mesas que en el sentido principal; el cartel y la basura son propios de este sentido.',
  chalk: 'Marca de tiza',
  peg: 'Qué',
  distance: 'Por el recorrido',
  before: 'Desde el anterior',
  fromChalk: 'Desde la tiza',
  position: 'Latitud, longitud',
  wheeled: 'Medido',
  done: 'Hecho',
  begins: (what) => `${what}, desde aquí`,
  ends: (what) => `${what}, hasta aquí`,
  byHand: 'colocado a mano en el plan',
  noPlace: 'sin lugar: fuera del recorrido',
  why: 'Motivo',
  offCourse: (stations) => `Ninguna carrera pasa por estos puestos, así que no figuran aquí: ${stations}.`,
};
