/** What the checks say of where things stand: down the course is "adelante", up the course "atrás". */
import type { ItemKind } from '../../../kinds.ts';
import type { PlacingParams } from '../../params/reviewFlows.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, aPoint, areMany, begin } from '../nouns.ts';

/** Boxes stand for the trash where things have an order. */
const inOrder = (kind: ItemKind, say: Say): string => (kind === 'trash' ? 'cajas de basura' : say.itemInside(kind));
const theThing = (kind: ItemKind): string => (kind === 'trash' ? 'una caja de basura' : STANDING[kind]);
const things = (items: readonly ItemKind[], say: Say): string => say.all(items.map(theThing));
const placed = (byHand: readonly ItemKind[], say: Say): string =>
  byHand.length === 0 ? '' : ` (a mano: ${say.all(byHand.map((kind) => inOrder(kind, say)))})`;
const turnOver = (degrees: number, most: number): string => `${Math.max(Math.round(Math.abs(degrees)), most + 1)}°`;

function boxDistance(
  { end, measured: at, limit: wanted, byHand, own }: PlacingParams['box-distance'],
  say: Say,
): Sentence {
  const before = at < 0;
  const { measured, limit } = say.compare(at, wanted);
  const how = byHand ? ' (a mano)' : own === null ? '' : ' (distancia propia del puesto)';
  const short = at < wanted[0];
  const by = say.enough(short ? wanted[0] - at : at - wanted[1]);
  return [
    `La ${end === 'first' ? 'primera' : 'última'} caja está ${before ? `${say.length(-at)} antes del final de las mesas` : `${measured} después de la última mesa`}${how}.`,
    `La distancia${before ? ' después de ellas' : ''} debe ser de ${limit}.`,
    !byHand && own !== null
      ? 'Borre la distancia propia del puesto, o admítala con una dispensa.'
      : `Mueva las cajas ${by} hacia ${short ? 'adelante' : 'atrás'}.`,
  ];
}

function hardToRead(params: PlacingParams['sign-hard-to-read'], say: Say): Sentence {
  if (params.is === 'bend')
    return [
      `El recorrido gira ${turnOver(params.turn, params.most)} a la ${say.side(params.turn > 0 ? 'left' : 'right')} en el cartel, o en los ${say.length(params.within)} anteriores.`,
      `Debe girar como mucho ${params.most}°, para que el cartel se vea a tiempo.`,
      'Mueva el cartel o el puesto por la recta.',
    ];
  const { measured: grade, limit: most } = say.comparePercent(params.measured, params.limit);
  return [
    `El recorrido baja un ${grade} en los ${say.length(params.over)} antes del cartel.`,
    `Debe bajar como mucho un ${most}, para que dé tiempo a leerlo.`,
    'Mueva el cartel o el puesto fuera de la bajada.',
  ];
}

function wayBlocked(params: PlacingParams['medical-way-blocked'], say: Say): Sentence {
  const [medical, access] = [aPoint(params.medical, say), aPoint(params.access, say)];
  if (params.by === 'flow')
    return [
      `El paso de ${medical}, a la ${say.side(params.side)}, a ${access} cruza el recorrido.`,
      'Una camilla o una ambulancia no debe tener que cruzar entre corredores.',
      'Ponga los dos en un mismo lado, o acuerde con el responsable médico cómo parar a los corredores y admítalo con una dispensa.',
    ];
  const one = !areMany(params.items);
  return [
    `${begin(things(params.items, say))} ${one ? 'está' : 'están'} en el paso directo de ${medical} a ${access}.`,
    'El paso de una camilla debe estar libre de mesas y carteles.',
    'Mueva un punto, o lo que hay entre los dos.',
  ];
}

export const placing: TextsOf<PlacingParams> = {
  'after-descent': ({ measured, limit, races, over }, say) => {
    const { measured: grade, limit: most } = say.comparePercent(measured, limit);
    return [
      `${say.all(races.map(say.race))} ${races.length > 1 ? 'bajan' : 'baja'} un ${grade} en los ${say.length(over)} antes de las mesas.`,
      `Debe ser menos del ${most}: se llega rápido y se frena tarde.`,
      'Mueva las mesas a un tramo llano, o avise al equipo y reparta más adelante.',
    ];
  },
  'box-distance': boxDistance,
  'box-in-bend': ({ turn, most, after }, say) => [
    `El recorrido gira ${turnOver(turn, most)} a la ${say.side(turn > 0 ? 'left' : 'right')} junto a las cajas, ${say.length(Math.max(after, 0))} después de las mesas.`,
    `Donde están debe girar como mucho ${most}°.`,
    'Mueva el puesto por la recta, o coloque la basura a mano.',
  ],
  'box-on-leg': ({ boxes, courses, at, measured, limit }, say) => {
    const { measured: near, limit: least } = say.compare(measured, limit);
    return [
      `${boxes === 1 ? 'Una caja está' : `${say.count(boxes)} cajas están`} en el paso de ${say.all(courses.map(say.course))}, a ${near} de su línea (en ${say.far(at)}).`,
      `Las cajas deben estar al menos a ${least} de ella.`,
      'Mueva el puesto, o coloque la basura a mano, lejos de la salida.',
    ];
  },
  'boxes-few': ({ boxes, needed, cups, perBag, bags }, say) => [
    `Hay ${boxes === 1 ? 'una caja' : `${say.count(boxes)} cajas`} para unos ${say.count(cups)} vasos usados.`,
    `Hacen falta al menos ${say.count(needed)}: en una bolsa caben ${say.count(perBag)} vasos, y una caja lleva ${say.count(bags)} bolsas al día (supuesto).`,
    'Añada cajas, o prevea vaciarlas más veces y admítalo con una dispensa.',
  ],
  'boxes-missing': ({ every }, say) => [
    'Se reparten vasos y no hay ninguna caja de basura.',
    'Debe haber cajas después de las mesas, donde se tiran los vasos.',
    `Indique cuántas, o borre el número para tener una cada ${say.length(every)}.`,
  ],
  'item-order': ({ met, wanted, byHand }, say) => {
    const order = (kinds: readonly ItemKind[]): string => kinds.map((kind) => inOrder(kind, say)).join(', luego ');
    return [
      `Los corredores encuentran ${order(met)}${placed(byHand, say)}.`,
      `El orden debe ser ${order(wanted)}.`,
      byHand.length === 0 ? 'Corrija las distancias.' : 'Muévalos, o deje que los coloquen las distancias del plan.',
    ];
  },
  'items-on-top': ({ items, overlap, byHand }, say) => [
    `${begin(things(items, say))} están en un mismo sitio, a lo largo de ${say.length(overlap)}${placed(byHand, say)}.`,
    'Cada cosa debe tener su sitio.',
    'Sepárelos a lo largo de la vía.',
  ],
  'medical-way-blocked': wayBlocked,
  'near-finish': ({ measured, limit, races }, say) => {
    const { measured: left, limit: least } = say.compareFar(measured, limit);
    return [
      `Desde aquí a ${say.all(races.map(say.race))} le${races.length > 1 ? 's' : ''} quedan solo ${left} hasta la meta.`,
      `El último puesto debe estar al menos a ${least} de ella.`,
      'Muévalo hacia atrás, o prescinda de él.',
    ];
  },
  'near-start': ({ measured, limit, races }, say) => {
    const { measured: run, limit: least } = say.compareFar(measured, limit);
    return [
      `${say.all(races.map(say.race))} ${races.length > 1 ? 'llegan' : 'llega'} aquí a solo ${run} de la salida.`,
      `El primer puesto debe estar al menos a ${least}, donde los corredores van menos apretados.`,
      'Muévalo hacia adelante, o prescinda de él.',
    ];
  },
  'point-blocked': ({ items, point, station, measured, limit }, say) => {
    const { measured: near, limit: least } = say.compare(measured, limit);
    const whose = station === null ? '' : ` de ${say.station(station)}`;
    return [
      `${begin(things(items, say))} ${areMany(items) ? 'están' : 'está'} sobre ${aPoint(point, say)}${whose}, a ${near}.`,
      `A su alrededor deben quedar libres al menos ${least}.`,
      'Mueva el punto, o lo que está encima.',
    ];
  },
  'sign-hard-to-read': hardToRead,
  'sign-in-road': ({ measured, limit, road, sure }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `El cartel está a ${away} de la línea del recorrido (a mano), en la calzada${road === null ? '' : `, que mide ${say.length(road)} de ancho`}.`,
      `Debe estar al menos a ${least} de la línea, junto a la calzada${sure ? '' : '; el error de posición no permite saberlo'}.`,
      sure ? 'Páselo al arcén.' : 'Compruébelo en el terreno.',
    ];
  },
};
