import type { FrameText } from '../frameText.ts';

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
  left: 'izquierda',
  right: 'derecha',
  side: 'Lado',
  sideUnclear: 'lado sin determinar: pregunte antes de montar',
  date: (weekday, day, month, year) => `${WEEKDAYS[weekday]} ${day} de ${MONTHS[month]} de ${year}`,
  // Spaces from five digits on: Ortografía de la lengua española, 2010 (from memory).
  count: (value) => (value < 10_000 ? String(value) : String(value).replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202F')),
};
