/** What the checks say of the road and of points beside it. */
import type { RoadParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { aPoint, begin, sure } from '../nouns.ts';

const LOOK = 'Compruébelo en el terreno.';

/** Degrees, never rounded down to what is allowed. */
const turnOver = (degrees: number, most: number): string => `${Math.max(Math.round(Math.abs(degrees)), most + 1)}°`;

const upOrDown = (along: number, say: Say): string =>
  `${say.length(Math.abs(along))} ${along < 0 ? 'antes' : 'después'} de`;

const INSIDE = {
  inside: ', hacia su lado: los corredores recortan pegados a ellas',
  outside: ', hacia el otro lado: quien va por lo más corto tiene que cruzar hasta ellas',
} as const;

function dropSide(params: RoadParams['drop-side'], say: Say): Sentence {
  const point = begin(aPoint(params.point, say));
  const away = 'offset' in params ? say.length(Math.abs(params.offset)) : '';
  switch (params.is) {
    case 'across':
      return [
        `${point} queda ${away} a la ${say.side(params.side)} del recorrido; las mesas están a la ${say.side(params.tables)}.`,
        'Debe estar en el lado de las mesas; si no, hay que llevarlo todo a través del recorrido.',
        'Cámbielo de sitio, o descargue antes de que se cierre el recorrido y admítalo con una exención.',
      ];
    case 'far':
      return [
        `${point} está a más de ${say.length(params.radius)} del recorrido, así que no está claro en qué lado queda.`,
        null,
        LOOK,
      ];
    case 'tables-unclear':
      return [
        `El lado de las mesas no está claro, ni por tanto si ${aPoint(params.point, say)} queda en él.`,
        null,
        LOOK,
      ];
    default:
      return [
        `${point} está a ${away} de la línea del recorrido: su lado es solo ${sure(params.confidence, say)}.`,
        null,
        LOOK,
      ];
  }
}

function trashBlocks(params: RoadParams['trash-blocks-medical'], say: Say): Sentence {
  const medical = aPoint(params.medical, say);
  if (params.is === 'far') {
    const far = `${begin(aPoint(params.point, say))} está a más de ${say.length(params.radius)} del recorrido`;
    return [`${far}: no está claro si la basura queda entre ${medical} y su punto de acceso.`, null, LOOK];
  }
  const between = `Hay ${say.length(params.overlap)} de la fila de cajas de basura entre ${medical} y su punto de acceso`;
  if (params.side === null) return [`${between}, pero no está claro si todo está en un mismo lado.`, null, LOOK];
  return [
    `${between}, todo a la ${say.side(params.side)}.`,
    'El paso de una camilla debe estar libre de cajas y vasos.',
    'Lleve el punto médico o el de acceso a un extremo de la basura, o coloque la basura a mano.',
  ];
}

function medicalAccess({ point, nearest, limit, far }: RoadParams['medical-without-access'], say: Say): Sentence {
  const medical = begin(aPoint(point, say));
  if (nearest === null)
    return [
      `${medical} no tiene punto de acceso: en el plan no hay ninguno.`,
      `Debe haber uno a menos de ${say.length(limit)}.`,
      'Añada uno donde pueda llegar una ambulancia.',
    ];
  const { measured, limit: most } = say.compare(nearest.distance, limit);
  const names = [
    ...(nearest.point.name === null ? [] : [say.quote(nearest.point.name)]),
    ...(nearest.station === null ? [] : [`en ${say.station(nearest.station)}`]),
  ];
  return [
    `${medical} está a ${nearest.distance < 1000 ? measured : say.far(nearest.distance)} en línea recta del punto de acceso más cercano${names.length === 0 ? '' : ` (${names.join(' ')})`}.`,
    `Debe estar como mucho a ${most}.`,
    far
      ? 'Añada uno donde pueda llegar una ambulancia.'
      : 'Mueva uno de los dos, añada un acceso más cercano, o acuérdelo con el responsable médico y admítalo con una exención.',
  ];
}

export const road: TextsOf<RoadParams> = {
  'access-missing': () => [
    'No hay punto de acceso ni de entrega de material.',
    'Debe haber uno, para que el material y una ambulancia sepan por dónde llegar.',
    'Añada uno en Puntos.',
  ],
  'bend-near-tables': ({ turn, most, within, away, tables }, say) => [
    `El recorrido gira ${turnOver(turn, most)} a la ${say.side(turn > 0 ? 'left' : 'right')} ${away === 0 ? 'junto a' : upOrDown(away, say)} las mesas${tables === null ? '' : INSIDE[tables]}.`,
    `A menos de ${say.length(within)} de ellas debe girar como mucho ${most}°.`,
    'Mueva el puesto por la recta.',
  ],
  'clear-width': ({ measured, limit, road: width, taken, crew }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    const short = limit - measured;
    return [
      `Quedan libres ${clear} de los ${say.length(width)} de vía: las mesas y el equipo que reparte (${say.length(crew)}, supuesto) ocupan ${say.length(taken)}.`,
      `Deben quedar libres al menos ${least}.`,
      `${short <= taken ? `Eche las mesas ${say.enough(short)} hacia atrás, vaya` : 'Vaya'} a una vía más ancha, o acuerde un ancho menor con la autoridad de la vía.`,
    ];
  },
  'descent-with-wheels': ({ measured, limit, race, over }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `${say.race(race)}, sobre ruedas, baja un ${grade} en los ${say.length(over)} antes de las mesas.`,
      `Debe ser menos del ${most}: las ruedas llegan rápido y frenan tarde.`,
      'Mueva las mesas, o mantenga la vía libre hasta que pasen las ruedas y avise al equipo.',
    ];
  },
  'drop-side': dropSide,
  'grade-at-tables': ({ measured, limit, climbs, around }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `El recorrido ${climbs ? 'sube' : 'baja'} un ${grade} en las mesas, contando ${say.length(around)} a cada lado.`,
      `Debe ser como mucho un ${most}.`,
      'Busque un tramo llano, o nivele las mesas.',
    ];
  },
  'medical-without-access': medicalAccess,
  'responders-width': ({ measured, limit, road: width, stations = [] }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      stations.length > 1
        ? `Quedan libres tan solo ${clear} de vía en ${some(stations.map(say.station), say, (count) => `${say.count(count)} más`)}, que tienen punto médico o de acceso.`
        : `Quedan libres ${clear} de los ${say.length(width)} de vía junto a las mesas y al equipo que reparte, y aquí hay un punto médico o de acceso.`,
      `Una vía para bomberos necesita ${least} libres.`,
      'Pregunte a los bomberos y al responsable médico cómo pasan los vehículos, o eche las mesas hacia atrás.',
    ];
  },
  'trash-blocks-medical': trashBlocks,
};
