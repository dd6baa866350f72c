/** What is said of points recorded on the ground. Down the course is "adelante", up the course "atrás". */
import type { PlacedParams, StationItem } from '../../params/placed.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { begin, ofThe, sure, THE, theItem } from '../nouns.ts';

const NAME_IT = 'Nómbrelo por su puesto y por lo que es, por ejemplo «s1 sign»';
const SAMPLE = { metric: 'wheel 89.6 m', imperial: 'wheel 98 yd' } as const;

const aPoint = (name: string | null, say: Say): string =>
  name === null ? 'un punto sin nombre' : `el punto ${say.quote(name)}`;

const thePoint = (name: string | null, say: Say): string => begin(aPoint(name, say));

const thing = ({ item, end }: PlacedParams['placed-wheel-unused']): string =>
  end === null ? THE[item] : `el ${end === 'from' ? 'principio' : 'final'} ${ofThe(item)}`;

const ofThing = (which: PlacedParams['placed-wheel-unused']): string =>
  `de ${thing(which)}`.replace(/^de el /u, 'del ');

const itemOf = ({ station, item, measure }: StationItem, say: Say): string =>
  `${THE[item]} de ${say.station(station)}${measure === null ? '' : ` para quienes pasan en ${say.far(measure)}`}`;

const reference = (item: PlacedParams['placed-wheel-unused']['item']): string =>
  item === 'sign' ? 'antes de la primera mesa' : 'después de la última mesa';

const way = (move: number): string => (move > 0 ? 'hacia adelante' : 'hacia atrás');

function ambiguous(params: PlacedParams['placed-ambiguous'], say: Say): Sentence {
  switch (params.is) {
    case 'stations': {
      const names = [...new Set(params.stations.map(say.station))];
      const what =
        names.length > 1
          ? `nombra ${say.all(names)}`
          : `puede ser de ${say.count(params.stations.length)} puestos llamados ${names[0]}`;
      return [`${thePoint(params.point, say)} ${what}.`, 'No se usa.', `${NAME_IT}.`];
    }
    case 'between':
      return [
        `${thePoint(params.point, say)} puede ser ${say.any(params.of.map((one) => itemOf(one, say)))}.`,
        `Su error de ${say.length(params.r95)} no permite saberlo, y no se usa.`,
        `${NAME_IT}.`,
      ];
    default:
      return [
        `${begin(say.all(params.points.map((name) => aPoint(name, say))))} representan lo mismo: ${itemOf(params.of, say)}.`,
        'Debe haber uno solo; no se usa ninguno.',
        'Quite el que sobra, o nómbrelo por lo que es.',
      ];
  }
}

const MISSED = {
  sign: 'no se comprueba su distancia a la primera mesa',
  trash: 'no se comprueba su distancia a la última mesa',
  table: 'las distancias se toman desde donde está en el plan',
} as const;

export const placed: TextsOf<PlacedParams> = {
  'placed-ambiguous': ambiguous,
  'placed-assumptions': ({ perHdop, r95, between, wheelShare, wheelFixed }, say) => [
    `Errores supuestos al 95 % de los puntos: ${say.length(perHdop)} × hdop, o ${say.length(r95)} sin hdop y en lugares del plan (± ${say.length(between)} entre dos).`,
    `De la rueda: ${say.percent(wheelShare)} y ${say.length(wheelFixed)}.`,
    'Un solo punto en una mesa marca su primer extremo; la basura se comprueba con la tolerancia del cartel.',
  ],
  'placed-distance': (params, say) => {
    const { item, margin, move } = params;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const doubt = move === null ? ` (± ${say.length(margin)})` : '';
    return [
      `${begin(thing(params))} está ${measured}${doubt} ${reference(item)}.`,
      `La distancia debe ser de ${limit}${move === null ? ', y el error no permite saber si lo es' : ''}.`,
      move === null
        ? 'Mídalo con rueda, o regístrelo otra vez.'
        : `Muévalo ${say.length(Math.abs(move))} ${way(move)}.`,
    ];
  },
  'placed-far': (params, say) => {
    const { margin, along, sure: clear } = params;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const doubt = clear ? '' : ` (± ${say.length(margin)})`;
    return [
      `Las mesas están a ${measured}${doubt} de su lugar previsto${along === null ? '' : `, desplazadas ${way(along)}`}.`,
      `Deben estar a ${limit} como máximo${clear ? '' : ', y el error no permite saber si lo están'}.`,
      clear ? 'Lleve el puesto allí, o corrija el plan y revíselo otra vez.' : 'Regístrelas otra vez.',
    ];
  },
  'placed-hdop': ({ point, hdop, r95 }, say) => [
    `${thePoint(point, say)} tiene un hdop de ${say.found(hdop)}, que no da ningún receptor.`,
    'Debe ser mayor que 0.',
    `Su error se toma como ${say.length(r95)}, como si no lo tuviera.`,
  ],
  'placed-missing': (params, say) => {
    if (params.is === 'all')
      return ['Aquí no se registró nada.', 'Deben registrarse el cartel, las mesas y la basura.'];
    const { item, measure } = params;
    const whose = measure === null ? '' : ` para quienes pasan en ${say.far(measure)}`;
    return [`No se registró ${THE[item]}${whose}: ${MISSED[item === 'sign' || item === 'trash' ? item : 'table']}.`];
  },
  'placed-off-course': ({ point, item, radius }, say) => [
    `${thePoint(point, say)}, ${THE[item]}, está a más de ${say.length(radius)} de su recorrido o más allá de su extremo, así que no tiene distancia.`,
    null,
    'Compruebe dónde se registró.',
  ],
  'placed-order': ({ pairs, by, planned }, say) => [
    `Los corredores encuentran ${pairs.map(([first, then]) => `${THE[first]} antes que ${THE[then]}`).join(', ')} (por ${say.length(by)}).`,
    `El orden debe ser ${planned.map((kind) => say.itemInside(kind)).join(', ')}.`,
    'Muévalos, o corrija los nombres de los puntos.',
  ],
  'placed-side': (params, say) => {
    if (params.is === 'unclear')
      return [
        `No está claro en qué lado de la vía ${params.items.length > 1 ? 'están' : 'está'} ${say.all(params.items.map((kind) => THE[kind]))}.`,
        params.items.length > 1
          ? 'Se registraron demasiado cerca de la línea para su error.'
          : 'Se registró demasiado cerca de la línea para su error.',
        'Compruébelo en el terreno.',
      ];
    const { item, side, planned, confidence } = params;
    return [
      `${theItem(item)} está a la ${say.side(side)} según lo ven sus corredores${confidence < 0.95 ? ` (${sure(confidence, say)})` : ''}.`,
      `Debe estar a la ${say.side(planned)}.`,
      'Páselo al otro lado, o corrija el lado en el plan.',
    ];
  },
  'placed-swapped': ({ station, other }, say) => [
    `Los puntos de ${say.station(station)} están donde se prevé ${say.station(other)}, y los de ${say.station(other)} donde se prevé ${say.station(station)}.`,
    'Sus nombres parecen cambiados entre sí, y se comparan como si se intercambiaran.',
    'Corrija los nombres, o los puestos en el terreno.',
  ],
  'placed-unknown': (params, say) => [
    params.is === 'nothing'
      ? `${thePoint(params.point, say)} no nombra nada que el plan tenga en ${say.station(params.station)}, o nombra algo ya registrado.`
      : `${thePoint(params.point, say)} está a más de ${say.length(params.near)} de todo lo que podría ser en el plan.`,
    'No se usa.',
    `${NAME_IT}, o quítelo.`,
  ],
  'placed-wheel-differs': ({ wheel, positions, margin, ...which }, say) => [
    `${begin(thing(which))} está ${say.length(wheel)} ${reference(which.item)} según la rueda, pero ${say.length(positions)} (± ${say.length(margin)}) según la posición.`,
    'Vale la rueda.',
    'Compruebe hasta dónde se midió.',
  ],
  'placed-wheel-needed': ({ by, margin, tolerance, ...which }, say) => {
    const { measured, limit } = say.compare(margin, tolerance);
    const how =
      which.item === 'sign'
        ? 'Mida con rueda del cartel a la primera mesa'
        : 'Mida con rueda desde el final de la última mesa';
    return [
      `El error ${by === 'wheel' ? 'de la rueda' : 'de las posiciones'} ${ofThing(which)} (± ${measured}) es mayor que la tolerancia de ${limit}.`,
      'Así no se puede confirmar ninguna distancia.',
      `${how} y anótelo en el comentario del punto, por ejemplo ${say.quote(SAMPLE[say.units])}${by === 'wheel' ? '; compruébelo con cinta' : ''}.`,
    ];
  },
  'placed-wheel-unread': ({ point, text }, say) => [
    `${thePoint(point, say)} tiene la lectura de rueda ${say.quote(text)}, que no es una longitud; se usa su posición.`,
    `Debe ser una longitud con su unidad, por ejemplo ${say.quote(SAMPLE[say.units])}.`,
  ],
  'placed-wheel-unused': (which) => [
    `${begin(thing(which))} se midió con rueda, pero allí el plan no tiene distancia de rueda, porque la línea del bordillo se dobla.`,
    'Se usa la posición.',
  ],
};
