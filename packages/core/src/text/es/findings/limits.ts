/** Un límite superado: lo encontrado, lo que se lee como máximo, qué hacer. */
import type { Counted, Reader } from '../../../limits.ts';
import type { LimitParams } from '../../params/limits.ts';
import type { TextsOf } from '../../sentence.ts';

const SUBJECTS: { readonly [reader in Reader]: string } = {
  plan: 'El plan',
  gpx: 'El archivo GPX',
  geojson: 'El GeoJSON',
  drawing: 'El dibujo de fondo',
  ground: 'El mapa del terreno',
  results: 'El archivo de resultados',
  list: 'La lista de puestos',
  roster: 'La lista de voluntarios',
  leftovers: 'El formulario de sobrantes',
  zip: 'El archivo ZIP',
};

const NOUNS: { readonly [what in Counted]: string } = {
  bytes: 'MB',
  unpacked: 'MB de archivos descomprimidos',
  files: 'archivos',
  depth: 'niveles de anidamiento',
  values: 'valores',
  points: 'puntos',
  waypoints: 'waypoints',
  lines: 'tracks y rutas',
  segments: 'segmentos de track',
  attributes: 'atributos en una etiqueta',
  namespaces: 'espacios de nombres vigentes',
  characters: 'caracteres en un texto',
  rows: 'filas',
  columns: 'columnas',
  cells: 'celdas',
  features: 'objetos',
  entries: 'entradas en una lista',
  courses: 'recorridos',
  races: 'carreras',
  waves: 'salidas',
  marks: 'marcas de distancia',
  stations: 'puestos',
  zones: 'zonas',
  vehicles: 'vehículos',
  waivers: 'exenciones',
  variants: 'variantes',
  crew: 'personas',
};

const ACTIONS: { readonly [reader in Reader]: string } = {
  plan: 'Borre lo que sobra, guarde los recorridos en archivos GPX o haga varios planes.',
  gpx: 'Exporte solo el recorrido, sin datos de sensores o con menos puntos.',
  geojson: 'Dé solo el recorrido, o con menos puntos.',
  drawing: 'Recórtelo a la zona de la carrera o simplifique sus líneas.',
  ground: 'Recórtelo a lo largo de los recorridos de este plan (`halfcup ground`).',
  results: 'Deje los tiempos de llegada y parciales de una sola carrera.',
  list: 'Deje los puestos de este plan.',
  roster: 'Deje las personas de este plan.',
  leftovers: 'Use el formulario de este plan.',
  zip: 'Descomprímalo y abra solo el plan y sus archivos.',
};

/** Donde lo que supera el límite dice más que lo leído. */
const OWN_ACTIONS: { readonly [what in Counted]?: string } = {
  attributes: 'Puede estar dañado: exporte otra vez el recorrido como GPX 1.1.',
  namespaces: 'Puede estar dañado: exporte otra vez el recorrido como GPX 1.1.',
  depth: 'Puede estar dañado: expórtelo otra vez.',
  characters: 'Acorte el texto o exporte otra vez el archivo.',
};

export const limits: TextsOf<LimitParams> = {
  'past-limit': ({ reader, what, most, found }, say) => {
    const sized = what === 'bytes' || what === 'unpacked';
    const shown = (count: number): string => say.count(sized ? Math.ceil(count / 1_000_000) : count);
    return [
      `${SUBJECTS[reader]} tiene ${found === undefined ? `más de ${shown(most)}` : shown(found)} ${NOUNS[what]}.`,
      `Debe tener como máximo ${shown(most)}${sized ? ' MB' : ''}.`,
      OWN_ACTIONS[what] ?? ACTIONS[reader],
    ];
  },
  'more-problems': ({ listed }, say) => [
    `Solo se muestran ${say.count(listed)} problemas, y hay más.`,
    null,
    'Corríjalos y vuelva a mirar.',
  ],
};
