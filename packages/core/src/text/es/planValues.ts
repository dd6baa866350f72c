/** Partes de las frases sobre planes: qué debe ser un valor y qué se quiso decir. */
import { type Found } from '../found.ts';
import type { Accepted, Choice, PlainKind, QuantityKind, Thing } from '../params/plan.ts';
import type { Unknown } from '../params/unknown.ts';
import { thingName } from '../planThing.ts';
import type { Say } from '../say.ts';
import { planThings } from './planThings.ts';

/** "la distancia del cartel". */
export const nameOf = (thing: Thing): string => thingName(thing, planThings, 'el valor');

/** "La distancia del cartel", al comienzo de una frase. */
export const startOf = (thing: Thing): string => {
  const name = nameOf(thing);
  return `${name[0]!.toUpperCase()}${name.slice(1)}`;
};

const QUANTITIES: Readonly<Record<QuantityKind, readonly [noun: string, example: string]>> = {
  length: ['una longitud', '100 yd o 90 m'],
  duration: ['una duración', '30 min o 4:25:00'],
  volume: ['un volumen', '7 fl oz o 200 ml'],
  mass: ['una masa', '8.3 lb o 3.9 kg'],
};

const PLAIN: Readonly<Record<PlainKind, (say: Say) => string>> = {
  text: () => 'un texto',
  number: () => 'un número',
  whole: () => 'un número entero',
  boolean: () => 'true o false',
  list: () => 'una lista',
  object: () => 'un objeto entre llaves',
  other: () => 'otro tipo de valor',
  filledText: () => 'un texto que no esté vacío',
  id: ({ quote }) =>
    `un identificador que no esté vacío y que no sea ${quote('start')} ni ${quote('finish')}, que están reservados`,
  file: ({ quote }) => `un archivo de la carpeta del plan o de sus subcarpetas, como ${quote('tracks/full.gpx')}`,
  date: ({ quote }) => `una fecha de 1900 a 2999 como ${quote('2027-09-12')}`,
  timeZone: ({ quote }) => `una zona horaria de la IANA como ${quote('Atlantic/Azores')} o ${quote('UTC')}`,
  language: ({ quote }) => `una etiqueta de idioma como ${quote('en')}`,
  clock: ({ quote }) => `una hora como ${quote('08:00')} o ${quote('08:00:30')}; puede pasar de 24`,
  position: () => 'una longitud y una latitud en grados, como [-17.4, -33.2]',
  positionWithElevation: () => 'una longitud y una latitud en grados, con altitud o sin ella',
  track: () => 'el nombre de una traza, o su número contado desde 0',
  finish: () =>
    'una mediana con dispersión, proporciones con tiempos, una lista de tiempos, o un archivo CSV con su columna',
  passes: ({ quote }) => `${quote('lead')}, ${quote('all')} o una lista de pasos, cada uno con su carrera y su número`,
};

const PIECES = { entries: ['entrada', 'entradas'], characters: ['carácter', 'caracteres'] } as const;

/** "una longitud como 100 yd o 90 m". */
export function acceptedText(accepted: Accepted, found: Found, say: Say): string {
  switch (accepted.kind) {
    case 'length':
    case 'duration':
    case 'volume':
    case 'mass': {
      const [noun, example] = QUANTITIES[accepted.kind];
      const bound = accepted.positive === true ? ' mayor que 0,' : typeof found === 'number' ? ' de 0 o más,' : '';
      return `${noun}${bound} como ${example}`;
    }
    case 'within':
      return `de ${say.bounds(accepted.quantity, accepted.range)}`;
    case 'oneOf':
      return say.any(accepted.values.map(say.found));
    case 'over':
      return `mayor que ${say.found(accepted.bound)}`;
    case 'atLeast':
      return `${say.found(accepted.bound)} o más`;
    case 'under':
      return `menor que ${say.found(accepted.bound)}`;
    case 'atMost':
      return `${say.found(accepted.bound)} o menos`;
    case 'fewest':
    case 'most':
      return `de ${say.count(accepted.count)} ${PIECES[accepted.of][accepted.count === 1 ? 0 : 1]} ${accepted.kind === 'fewest' ? 'como mínimo' : 'como máximo'}`;
    default:
      return PLAIN[accepted.kind](say);
  }
}

/** Qué más ayuda: las unidades que hay, la palabra más parecida. */
export function acceptedHint(accepted: Accepted, say: Say): string | null {
  if (accepted.kind === 'oneOf')
    return accepted.near === undefined ? null : `¿Quiso decir ${say.found(accepted.near)}?`;
  if (accepted.kind === 'within')
    return accepted.meant === undefined ? null : `¿Quiso decir ${say.found(accepted.meant)}?`;
  if (accepted.kind === 'file') return 'No se admiten direcciones ni rutas que salgan de esa carpeta.';
  if ('colons' in accepted) return 'Con dos puntos es siempre horas:minutos:segundos.';
  return 'units' in accepted ? `Su unidad puede ser ${say.any(accepted.units)}.` : null;
}

/** Si hay un valor. */
export const isStated = (found: Found): boolean =>
  typeof found !== 'object' || found === null || found.kind !== 'nothing';

/** "«a», «b» y 3 más". */
export function listed(words: readonly string[], more: number, say: Say): string {
  const quoted = words.map((word) => say.found(word));
  return more === 0 ? say.all(quoted) : `${quoted.join(', ')} y ${say.count(more)} más`;
}

/** "¿Quiso decir «signs»?", o las palabras que hay: "Aquí se admiten: «a», «b» y 3 más." */
export function suggested({ near, known, more }: Unknown, what: string, none: string, say: Say): string {
  if (near !== undefined) return `¿Quiso decir ${say.found(near)}?`;
  if (known.length === 0) return none;
  return `${what}: ${listed(known, more, say)}.`;
}

export const choiceText: Readonly<Record<Choice, string>> = {
  gpx: 'un archivo GPX',
  line: 'una línea de puntos',
  parts: 'tramos de otros recorridos',
  at: 'un lugar por longitud y latitud',
  on: 'un lugar en un recorrido',
};
