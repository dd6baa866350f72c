/** Recorridos: sus puntos, huecos, marcas y tramos. */
import type { CourseParams, FlawAt, Knot } from '../../params/course.ts';
import { sideBySide, wholeFar } from '../../parts.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';

/** "los puntos 4 y 5". */
const pair = (point: number, say: Say): string => `los puntos ${say.count(point)} y ${say.count(point + 1)}`;

/** "Los puntos 4 a 9 del segmento 1", as a sentence begins. */
function flawed({ first, last, segment }: FlawAt, say: Say): string {
  const points =
    first === last
      ? `El punto ${say.count(first)}`
      : `Los puntos ${say.count(first)} ${last === first + 1 ? 'y' : 'a'} ${say.count(last)}`;
  return `${points} del segmento ${segment}`;
}

const ENDS = { start: 'la salida', finish: 'la meta' } as const;

/** As it stands inside a sentence. */
function knot(one: Knot, say: Say): string {
  if (typeof one === 'string') return ENDS[one];
  return 'name' in one ? say.quote(one.name) : `la marca de ${say.far(one.measure)}`;
}

const beginning = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;

const WHAT = {
  station: 'El puesto',
  partStart: 'El principio de este tramo',
  partEnd: 'El final de este tramo',
} as const;

const beyond: TextsOf<CourseParams>['measure-beyond-course'] = (params, say) => {
  const course = params.course === undefined ? 'el recorrido' : say.course(params.course);
  const what = WHAT[params.what];
  const should = 'Debe estar en el recorrido.';
  if (params.problem === 'gap')
    return [`${what} está en ${say.far(params.measure)}, donde ${course} salta un hueco.`, should];
  if (params.problem === 'before') {
    const { measured, limit } = say.compareFar(params.measure, params.start);
    return [`${what} está en ${measured}, pero ${course} empieza en ${limit}.`, should];
  }
  const { measured, limit } = say.compareFar(params.measure, params.length);
  return [`${what} está en ${measured}, pero ${course} mide ${limit}.`, should];
};

const SHORT = {
  none: 'El recorrido no tiene puntos.',
  onePlace: 'Todos los puntos del recorrido están en el mismo lugar.',
  noLength: 'La línea del recorrido no tiene longitud.',
} as const;

const geojson: TextsOf<CourseParams>['geojson'] = (params, say) => {
  if (params.problem === 'nested')
    return ['El GeoJSON tiene colecciones anidadas a demasiada profundidad.', 'Debe tener pocos niveles.'];
  if (params.problem === 'holes')
    return [
      `El polígono tiene ${params.holes === 1 ? 'un hueco' : `${say.count(params.holes)} huecos`}.`,
      'Debe ser un solo anillo.',
    ];
  if (params.problem === 'corners')
    return [
      `El anillo tiene ${params.corners} ${params.corners === 1 ? 'vértice' : 'vértices'}.`,
      'Debe tener tres o más.',
    ];
  const found = say.found(params.found);
  if (params.problem === 'type')
    return [
      `El tipo en el GeoJSON es ${found}.`,
      'Debe ser Feature, FeatureCollection, GeometryCollection, o un punto, línea o polígono.',
    ];
  const should = { object: 'un objeto GeoJSON', coordinates: 'una lista de coordenadas', list: 'una lista' } as const;
  return [`El GeoJSON tiene aquí ${found}.`, `Debe ser ${should[params.problem]}.`];
};

export const course: TextsOf<CourseParams> = {
  'gap-joined': ({ length, point, asked, seam }, say) => [
    seam === undefined
      ? `Dos segmentos están a ${say.length(length)}, entre ${pair(point, say)}.`
      : `Dos partes del recorrido se tocan a ${say.length(length)} una de otra en ${say.far(seam.measure)}${seam.times === 1 ? '' : `, ${say.count(seam.times)} veces en total`}.`,
    `Se unen con una línea recta${asked ? ', como se pidió' : ''}.`,
  ],
  'gap-skipped': ({ length, point }, say) => [
    `Dos segmentos están a ${say.length(length)}, entre ${pair(point, say)}.`,
    'El hueco se salta, como se pidió, y no añade distancia.',
  ],
  'gap-refused': ({ length, point, most }, say) => {
    const { measured, limit } = say.compare(length, most);
    return [
      `Dos segmentos están a ${measured}, entre ${pair(point, say)}.`,
      `Deben estar a ${limit} como máximo.`,
      'Corrija el archivo, o elija unir los huecos (línea recta) o saltarlos (sin distancia).',
    ];
  },
  position: ({ lon, lat, point, swapped }, say) => [
    point === undefined
      ? `La longitud es ${say.found(lon)}; la latitud, ${say.found(lat)}.`
      : `La longitud del punto ${say.count(point)} es ${say.found(lon)}; su latitud, ${say.found(lat)}.`,
    'Deben ser grados de -180 a 180 y de -90 a 90.',
    swapped === true ? 'La longitud va primero: quizá estén cambiadas.' : null,
  ],
  'course-too-short': (params) => [
    params.problem === 'few'
      ? `La línea del recorrido ${params.points === 1 ? 'tiene un solo punto' : 'no tiene puntos'}.`
      : SHORT[params.problem],
    'Debe tener al menos dos puntos distintos.',
  ],
  'course-too-long': ({ length, most, step, point }, say) => [
    `El recorrido mediría ${wholeFar(length, say)}, de ellos ${wholeFar(step, say)} entre ${pair(point, say)}.`,
    `Debe medir ${wholeFar(most, say)} como máximo.`,
    'Borre los puntos que no son de la carrera.',
  ],
  'mark-factor': ({ from, to, marks, line, within }, say) => {
    const { measured, limit } = sideBySide(marks, line, say);
    return [
      `De ${knot(from, say)} a ${knot(to, say)} las marcas dan ${measured}, pero la línea mide ${limit}.`,
      `Deben diferir en ${say.percent(within)} como máximo.`,
      'Corrija la marca o la línea.',
    ];
  },
  'mark-off-course': ({ mark, distance, most }, say) => {
    const { measured, limit } = sideBySide(distance, most, say);
    return [`${beginning(knot(mark, say))} está a ${measured} del recorrido.`, `Debe estar a ${limit} como máximo.`];
  },
  'marks-no-order': (params, say) => {
    if ('length' in params)
      return [`La longitud dada del recorrido es ${say.length(params.length)}.`, 'Debe ser mayor que 0.'];
    const { places, more } = params;
    const listed = places.map(({ mark, along }) => `${knot(mark, say)} en ${say.any(along.map(say.far))}`);
    return [
      `Las marcas no están en orden a lo largo de la línea: ${listed.join(', ')}${more > 0 ? ` y ${more} más` : ''}.`,
      'La distancia debe crecer de una marca a la siguiente.',
      'Corrija el lugar o la distancia de una marca, o invierta el recorrido.',
    ];
  },
  'measure-beyond-course': beyond,
  'part-backwards': ({ course: of, from, to }, say) => {
    const { measured, limit } = say.compareFar(to, from);
    return [`Este tramo de ${say.course(of)} va de ${limit} a ${measured}.`, 'Debe terminar después de empezar.'];
  },
  'parts-apart': ({ length, most }, say) => {
    const { measured, limit } = say.compare(length, most);
    return [`Este tramo empieza a ${measured} del final del anterior.`, `Deben estar a ${limit} como máximo.`];
  },
  geojson,
  'track-spike': (flaw, say) => [
    `${flawed(flaw, say)} se aparta ${say.length(flaw.size)} del recorrido y vuelve.`,
    `Este pico añade ${say.length(2 * flaw.size)}.`,
    'Borre el punto, salvo que el recorrido pase por allí.',
  ],
  'track-jump': (flaw, say) => [
    `${flawed(flaw, say)} están a ${say.length(flaw.size)}, mucho más que los puntos de alrededor.`,
    'Se unen con una línea recta.',
    'Añada los puntos intermedios, salvo que la carretera sea recta.',
  ],
  'track-sparse-bend': (flaw, say) => {
    const { measured, limit } = say.compare(flaw.size, flaw.most);
    return [
      `${flawed(flaw, say)} están a ${measured} en una curva.`,
      `Deben estar a ${limit} como máximo, para que la línea siga la carretera.`,
    ];
  },
  'track-tangle': (flaw, say) => [
    `El aparato parece haber estado parado: ${say.length(flaw.size)} de track a menos de ${say.length(10)} de un lugar.`,
    'segment' in flaw
      ? `${flawed(flaw, say)}.`
      : `Está de ${say.far(flaw.from)} a ${say.far(flaw.to)} a lo largo de la línea grabada.`,
  ],
};
