import type { FrameText } from '../frameText.ts';
import { streetWords } from './streetWords.ts';
import { supplyWords } from './supplyWords.ts';
import { words } from './words.ts';

const WEEKDAYS = ['domingo', 'lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábado'];
const MONTHS = [
  'enero',
  'febrero',
  'marzo',
  'abril',
  'mayo',
  'junio',
  'julio',
  'agosto',
  'septiembre',
  'octubre',
  'noviembre',
  'diciembre',
];

export const frame: FrameText = {
  version: (version) => `Versión ${version}`,
  noVersion: 'Sin versión',
  printed: (at) => `Impreso ${at}`,
  destroy: 'Destruya las copias anteriores',
  page: 'Página',
  of: 'de',
  noName: 'Plan sin nombre',
  toFill: 'rellenar:',
  caution:
    'Ayuda para planificar: deciden las normas locales, la autoridad de la vía, la policía y los profesionales habilitados.',
  station: 'Puesto',
  items: words.items,
  served: words.served,
  points: words.points,
  supplies: supplyWords,
  street: streetWords,
  left: words.left,
  right: words.right,
  side: 'Lado',
  sideUnclear: 'lado sin determinar: pregunte antes de montar',
  date: (weekday, day, month, year) => `${WEEKDAYS[weekday]} ${day} de ${MONTHS[month]} de ${year}`,
  count: words.count,
};
