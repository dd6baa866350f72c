/** What the checks say of items: down the course is "adelante", up the course "atrás". */
import type { ItemKind } from '../../../kinds.ts';
import type { ItemsParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, areMany, begin, ofThe, passAt, THE } from '../nouns.ts';

const LOOK = 'Compruébelo en el terreno.';

/** Several items as a sentence begins with them. */
const theItems = (items: readonly ItemKind[], say: Say): string => begin(say.all(items.map((kind) => THE[kind])));

function signMove({ measured, limit: [low, high], to }: ItemsParams['sign-distance'], say: Say): string {
  const what = to === 'table' ? 'las mesas' : 'la línea de entrega';
  return measured < low
    ? `Mueva el cartel ${say.enough(low - measured)} hacia atrás, o ${what} hacia adelante.`
    : `Mueva el cartel ${say.enough(measured - high)} hacia adelante, o ${what} hacia atrás.`;
}

function inZone(
  { items: kinds, zone, depth, betweenBoxes, sure, inside = false }: ItemsParams['item-in-zone'],
  say: Say,
): Sentence {
  const name = zone === '' ? 'una zona que debe quedar libre' : `la zona ${say.quote(zone)}, que debe quedar libre`;
  const one = !areMany(kinds);
  const how = inside
    ? `${one ? 'está' : 'están'} en ${name}, hasta a ${say.length(depth)} de su borde`
    : depth < 0
      ? `${one ? 'está' : 'están'} ${say.length(-depth)} fuera de ${name}`
      : depth === 0
        ? `${one ? 'toca' : 'tocan'} ${name}`
        : `${one ? 'entra' : 'entran hasta'} ${say.length(depth)} en ${name}`;
  return [
    `${begin(say.all(kinds.map((kind) => STANDING[kind])))} ${how}${betweenBoxes ? ', entre dos cajas: allí caen vasos' : ''}.`,
    sure ? 'Todo debe quedar fuera.' : 'Todo debe quedar fuera, y el error de posición no permite saberlo.',
    sure
      ? 'Saque lo que está dentro, mueva el puesto o pregunte a quien necesita la zona.'
      : `${LOOK.slice(0, -1)}, o pregunte a quien necesita la zona.`,
  ];
}

export const items: TextsOf<ItemsParams> = {
  'courses-disagree': ({ measured, limit, item, courses: [one, other] }, say) => {
    const { measured: apart, limit: most } = say.compare(measured, limit);
    return [
      `En una misma vía, las líneas de ${say.course(one)} y ${say.course(other)} ponen ${THE[item]} a ${apart} una de otra.`,
      `Deben coincidir dentro de ${most}.`,
      'Trace las vías compartidas con los mismos puntos.',
    ];
  },
  'item-across': ({ items: kinds, offset, side, tables }, say) => [
    `${theItems(kinds, say)} ${kinds.length === 1 ? 'está' : 'están hasta'} ${say.length(Math.abs(offset))} a la ${say.side(side)} del recorrido (a mano).`,
    `${kinds.length === 1 ? 'Debe' : 'Deben'} estar a la ${say.side(tables)}, como las mesas.`,
    `${kinds.length === 1 ? 'Páselo' : 'Páselos'} al otro lado, o declare el otro lado.`,
  ],
  'item-in-zone': inZone,
  'item-off-course': ({ measured, limit, items: kinds }, say) => {
    const one = kinds.length === 1;
    const { measured: distance, limit: most } = say.compare(measured, limit);
    return [
      `${theItems(kinds, say)} ${one ? 'está a' : 'están hasta a'} ${measured < 1000 ? distance : say.far(measured)} de su recorrido (a mano).`,
      `${one ? 'Debe' : 'Deben'} estar como mucho a ${most}.`,
      `Revise su posición (la longitud va primero), o ${one ? 'quítelo' : 'quítelos'}.`,
    ];
  },
  'item-outside': ({ items: kinds, beyond, by, lead }, say) => {
    const one = kinds.length === 1;
    const where =
      beyond === 'gap'
        ? 'sobre un hueco saltado'
        : `${one ? '' : 'hasta '}${say.enough(by)} ${beyond === 'start' ? 'antes de la salida' : 'después de la meta'}`;
    const how =
      beyond === 'gap' || !lead ? '' : ` ${say.enough(by)} hacia ${beyond === 'start' ? 'adelante' : 'atrás'}`;
    return [
      `${theItems(kinds, say)} ${one ? 'quedaría' : 'quedarían'} ${where}, donde no hay recorrido.`,
      null,
      `Mueva el puesto${how}, o ${one ? 'coloque el elemento' : 'colóquelos'} a mano.`,
    ];
  },
  'item-outside-allowed': ({ items: kinds, away, sure }, say) => [
    `${theItems(kinds, say)} ${kinds.length === 1 ? 'queda' : 'quedan hasta'} ${say.length(away)} fuera de toda zona permitida.`,
    sure
      ? 'Todo debe estar dentro de una.'
      : 'Todo debe estar dentro de una, y el error de posición no permite saberlo.',
    sure ? 'Mueva lo que queda fuera, mueva el puesto o haga ampliar la zona.' : LOOK,
  ],
  'items-overlap': ({ before, overlap, atTables, sideUnclear, others }, say) => [
    `El tramo del cartel a la basura se solapa ${say.length(overlap)} con el de ${say.station(before)}${atTables ? ', hasta las mesas de uno' : ''}${others === undefined ? '' : `; hay ${say.count(others)} puestos más que lo invaden`}.`,
    sideUnclear
      ? 'No deben coincidir en un mismo lado, y el lado de uno no está claro.'
      : 'En un mismo lado, uno debe acabar antes de que empiece el otro.',
    `Aleje uno al menos ${say.enough(overlap)}, o páselo al otro lado.`,
  ],
  'sign-distance': (params, say) => {
    const { to, byHand, own } = params;
    const first = to === 'table' ? 'la primera mesa' : 'la línea de entrega';
    const behind = params.measured < 0;
    const { measured, limit } = say.compare(params.measured, params.limit);
    const how = byHand ? ' (a mano)' : own === null ? '' : ' (distancia propia del puesto)';
    return [
      `El cartel está ${behind ? `${say.length(-params.measured)} después` : `${measured} antes`} de ${first}${how}.`,
      `La distancia${behind ? ' antes de ella' : ''} debe ser de ${limit}.`,
      !byHand && own !== null
        ? 'Borre la distancia propia del puesto, o admítala con una exención.'
        : signMove(params, say),
    ];
  },
  'sign-missed': ({ passes }, say) => [
    passes.length === 1
      ? `${passAt(passes[0]!, say)} no pasa por el cartel: su recorrido se incorpora entre el cartel y las mesas.`
      : `${say.all(passes.map((pass) => passAt(pass, say)))} no pasan por el cartel: sus recorridos se incorporan entre el cartel y las mesas.`,
    null,
    'Ponga un cartel propio para esos corredores, o mueva el puesto hacia adelante.',
  ],
  'tables-far-off': ({ measured, limit, road = null }, say) => {
    const { measured: away, limit: most } = say.compare(measured, limit);
    if (road !== null)
      return [
        `Con el ancho de la vía, ${say.length(road)}, las mesas quedarían a ${away} de la línea del recorrido.`,
        `Deben estar como mucho a ${most}.`,
        'Corrija el ancho, o quítelo y ponga el marcador en el bordillo.',
      ];
    return [
      `Las mesas quedarían a ${away} de la línea del recorrido, donde está el marcador.`,
      `Deben estar como mucho a ${most}.`,
      'Ponga el marcador en el bordillo, o indique el ancho de la vía.',
    ];
  },
  'tables-hidden': ({ measured, limit }, say) => {
    const { measured: swing, limit: most } = say.compare(measured, limit);
    return [
      `Entre el cartel y las mesas el recorrido se aparta ${swing} de la línea recta: puede que no se vean las mesas.`,
      `Deben ser como mucho ${most}.`,
      LOOK,
    ];
  },
  'tables-mismatch': ({ item, tables }, say) =>
    tables === 0
      ? [
          `Se sirve ${say.served(item)} sin ninguna mesa: no se monta nada, y el cartel no lo nombra.`,
          null,
          'Asígnele una mesa, o deje de servirlo.',
        ]
      : [
          `${begin(say.served(item))} tiene ${say.count(tables)} ${tables === 1 ? 'mesa' : 'mesas'}, pero no se sirve: no se monta ninguna.`,
          null,
          'Sírvalo, o quite sus mesas.',
        ],
  'two-way-road': ({ measured, limit, courses, items: kinds, sure }, say) => {
    const { measured: distance, limit: least } = say.compare(measured, limit);
    return [
      `Corredores de ${say.all(courses.map(say.course))} vienen en sentido contrario a ${distance} ${say.all(kinds.map(ofThe))}.`,
      `Deben ser al menos ${least}, la mitad del ancho libre${sure ? '' : '; las líneas grabadas no permiten saberlo'}.`,
      sure ? 'Pase los elementos al otro lado, o separe los dos sentidos con conos.' : LOOK,
    ];
  },
  'wheel-folds': ({ items: kinds, offset }, say) => [
    offset === null
      ? `No hay distancia de rueda hasta ${say.all(kinds.map((kind) => THE[kind]))}: entre la marca de tiza y ese punto hay un hueco saltado.`
      : `No se puede medir con rueda hasta ${say.all(kinds.map((kind) => THE[kind]))}: ${say.length(Math.abs(offset))} al lado del recorrido la línea se dobla.`,
    offset === null ? null : 'Una curva es más cerrada que eso, o una esquina tiene un lado demasiado corto.',
    `${kinds.length === 1 ? 'Colóquelo' : 'Colóquelos'} por la distancia del recorrido, y compruébelo en el terreno.`,
  ],
};
