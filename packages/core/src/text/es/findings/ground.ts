/** Lectura de archivos de calles: qué se encontró, qué se esperaba y qué hacer. */
import type { GroundBound, GroundFormat, GroundParams } from '../../params/ground.ts';
import type { TextsOf } from '../../sentence.ts';
import { gpx, XML } from './gpx.ts';

const FORMATS: { readonly [format in GroundFormat]: string } = {
  xml: 'del XML',
  pbf: 'del PBF',
  geojson: 'del JSON',
  gzip: 'del archivo comprimido',
};

const BOUNDS: { readonly [bound in GroundBound]: (most: string) => string } = {
  megabytes: (most) => `El archivo de calles contiene más de ${most} MB.`,
  nodes: (most) => `El archivo de calles tiene más de ${most} nodos.`,
  ways: (most) => `El archivo de calles tiene más de ${most} vías.`,
  relations: (most) => `El archivo de calles tiene más de ${most} relaciones.`,
  features: (most) => `El archivo de calles tiene más de ${most} objetos.`,
  attributes: (most) => `Un elemento tiene más de ${most} atributos.`,
  tagLength: (most) => `Hay más de ${most} caracteres de una etiqueta a la siguiente.`,
  depth: (most) => `Hay elementos anidados a más de ${most} niveles.`,
  kept: (most) => `Junto a los recorridos hay más de ${most} calles, superficies y puntos.`,
};

const SMALLER = 'Guarde un extracto más pequeño en torno a los recorridos.';
const SAVE_AGAIN = 'Guarde de nuevo el archivo de calles.';

export const ground: TextsOf<GroundParams> = {
  'ground-empty': () => [
    'El archivo de calles está vacío.',
    'Debe contener datos de OpenStreetMap en .osm, .osm.gz, .osm.pbf o GeoJSON.',
    SAVE_AGAIN,
  ],
  'ground-foreign': (params, say) => {
    const should = 'Debe contener datos de OpenStreetMap en .osm, .osm.gz, .osm.pbf o GeoJSON.';
    if (params.kind === 'text') return [`El archivo empieza por ${say.quote(params.found)}.`, should, SAVE_AGAIN];
    if (params.kind === 'html')
      return [
        'Esto es una página web (HTML), no un archivo de calles.',
        should,
        'La descarga pudo llevar a una página de error.',
      ];
    return params.kind === 'zip'
      ? ['Esto es un archivo ZIP.', should, 'Descomprímalo y use el archivo de calles que contiene.']
      : params.kind === 'nul'
        ? ['El archivo tiene un byte NUL: es binario o no se escribió hasta el final.', should, SAVE_AGAIN]
        : ['Este archivo es de un tipo desconocido.', should, SAVE_AGAIN];
  },
  'ground-root': (params, say) => {
    if ('missing' in params)
      return ['Este GeoJSON no tiene una lista de objetos.', null, 'Guarde las calles como una colección de objetos.'];
    return 'root' in params
      ? [`El elemento exterior es <${params.root}>.`, 'Debe ser <osm>.', 'Guarde las calles como XML de OpenStreetMap.']
      : [
          `El tipo de este GeoJSON es ${say.found(params.type)}.`,
          'Debe ser «FeatureCollection».',
          'Guarde las calles como una colección de objetos.',
        ];
  },
  'ground-cut-off': ({ format }) => [
    `El archivo termina en medio ${FORMATS[format]}: está cortado.`,
    null,
    'Descárguelo o guárdelo de nuevo.',
  ],
  'ground-broken': ({ format }) => [
    `Una parte ${FORMATS[format]} no se puede leer: el archivo está dañado.`,
    null,
    'Descárguelo o guárdelo de nuevo.',
  ],
  'ground-json': ({ found }, say) => [`El JSON se rompe en ${say.quote(found)}.`, null, SAVE_AGAIN],
  'ground-malformed': ({ fault, name }) => {
    if (fault === 'secondRoot')
      return ['Tras el final de <osm> hay otro elemento exterior.', null, 'Use los archivos de uno en uno.'];
    if (fault === 'doctype')
      return ['El archivo tiene un <!DOCTYPE>, que los datos de OpenStreetMap no necesitan.', null, 'Bórrelo.'];
    if (fault === 'other') return ['Aquí el texto no es XML bien formado.', null, SAVE_AGAIN];
    return XML[fault](name);
  },
  'ground-encoding': (params, say) => gpx['gpx-encoding'](params, say),
  'ground-pbf-feature': ({ feature }, say) => [
    `Este archivo PBF necesita un lector que conozca ${say.quote(feature)}.`,
    'Debe contener datos simples de OpenStreetMap, sin historial.',
    'Guarde un extracto actual.',
  ],
  'ground-limit': ({ bound, most }, say) => [BOUNDS[bound](say.count(most)), null, SMALLER],
  'ground-element': (params, say) => {
    if ('more' in params)
      return [`Otros ${say.count(params.more)} se omiten igualmente; hay ${say.count(params.all)} en total.`];
    const found = say.found(params.found);
    switch (params.problem) {
      case 'position':
        return [`Una posición es ${found}.`, 'Debe ser [longitud, latitud] en grados.', 'El objeto se omite.'];
      case 'geometry':
        return [
          `La geometría es ${found}.`,
          'Debe ser un punto, una línea o un polígono con coordenadas.',
          'El objeto se omite.',
        ];
      case 'feature':
        return [`Esto es ${found}.`, 'Debe ser un objeto de GeoJSON.', 'Se omite.'];
      case 'nodes':
        return [`Los nodos son ${found}.`, 'Debe haber uno por cada posición.', 'El objeto se omite.'];
      case 'id':
        return [
          `El identificador de este <${params.element}> es ${found}.`,
          `Debe ser un número entero de hasta ${say.count(params.most)}.`,
          'El elemento se omite.',
        ];
      default: {
        const north = params.problem === 'latitude';
        return [
          `La ${north ? 'latitud' : 'longitud'} de este <${params.element}> es ${found}.`,
          `Debe ser un número de -${north ? '90 a 90' : '180 a 180'}.`,
          'El elemento se omite.',
        ];
      }
    }
  },
  'ground-nothing': ({ read, within }, say) => [
    `De ${say.count(read)} elementos del archivo de calles, ninguno está a menos de ${say.length(within)} de un recorrido.`,
    null,
    'Guarde un extracto que cubra los recorridos.',
  ],
  'ground-no-course': () => [
    'El plan no tiene ningún recorrido que se pueda leer.',
    null,
    'Recorte el archivo de calles cuando tenga uno.',
  ],
};
