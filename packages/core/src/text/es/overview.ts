import type { OverviewText } from '../listsText.ts';

export const overview: OverviewText = {
  title: 'Vista general',
  map: 'Mapa',
  strip: (course) => `${course}, dibujado recto`,
  sides: 'El lado izquierdo, sobre la línea; el derecho, debajo, como los ven los corredores.',
  start: 'Salida',
  finish: 'Meta',
  number: 'N.º',
  name: 'Puesto',
  courses: 'Recorridos',
  elevation: (low, high) => `Altitud (en gris): ${low} a ${high}`,
  starts: (first, last) => (last === null ? `sale a las ${first}` : `sale de ${first} a ${last}`),
  found: (errors, warnings, notes) =>
    `revisión: ${errors} ${errors === 1 ? 'error' : 'errores'}, ${warnings} ${warnings === 1 ? 'aviso' : 'avisos'}, ${notes} ${notes === 1 ? 'nota' : 'notas'}`,
  north: 'N',
};
