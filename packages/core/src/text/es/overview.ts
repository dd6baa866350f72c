import type { OverviewText } from '../listsText.ts';

export const overview: OverviewText = {
  title: 'Vista general',
  map: 'Mapa',
  strip: (course) => `${course}, dibujado recto`,
  sides: 'Lado izquierdo sobre la línea, lado derecho debajo, como los ven los corredores.',
  start: 'Salida',
  finish: 'Meta',
  number: 'N.º',
  name: 'Puesto',
  courses: 'Recorridos',
  elevation: (low, high) => `El terreno en gris: ${low} a ${high}`,
  north: 'N',
};
