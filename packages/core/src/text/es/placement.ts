import type { PlacementText } from '../listsText.ts';

export const placement: PlacementText = {
  title: 'Lista de colocación',
  how: 'En el orden del recorrido: camine en el sentido de los corredores. En cada puesto haga una marca de tiza en el bordillo donde empieza la primera mesa de bebida (el extremo al que los corredores llegan antes), ponga ahí a 0 una rueda de medir y llévela por el bordillo. Anote lo que marca la rueda; marque cada elemento cuando esté puesto.',
  margin:
    '± es cuánto puede variar la lectura porque el bordillo se curva. No incluye el error de la propia rueda: calíbrela antes.',
  course: (name) => `Recorrido: ${name}`,
  otherDirection: 'otro sentido',
  sameTables:
    'Son las mesas ya indicadas, en otro sentido de paso; solo el cartel y las cajas de basura son propios de este sentido.',
  chalk: 'Marca de tiza',
  peg: 'Qué',
  distance: 'Distancia en el recorrido',
  before: 'Desde el elemento anterior',
  fromChalk: 'Desde la tiza',
  position: 'Latitud, longitud',
  wheeled: 'Lectura de la rueda',
  done: 'Hecho',
  begins: (what) => `${what}, desde aquí`,
  ends: (what) => `${what}, hasta aquí`,
  byHand: 'colocado a mano en el plan',
  noPlace: 'sin posición: fuera del recorrido',
  why: 'Motivo',
  offCourse: (stations) => `Ninguna carrera pasa por estos puestos, así que no figuran aquí: ${stations}.`,
};
