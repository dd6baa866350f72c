/** What the checks of a layout say; of stations and whom they serve here. */
import type { PassAt, ReviewParams, ServiceParams } from '../../params/review.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { TextsOf } from '../../sentence.ts';
import { nth, often, passAt, sure } from '../nouns.ts';
import { absence } from './reviewAbsence.ts';
import { flows } from './reviewFlows.ts';
import { ground } from './reviewGround.ts';
import { items } from './reviewItems.ts';
import { placing } from './reviewPlacing.ts';
import { road } from './reviewRoad.ts';
import { times } from './reviewTimes.ts';

/** So many passes are told one by one; the plan shows all. */
const MOST_PASSES = 2;

const passes = (all: readonly PassAt[], say: Say): string => say.all(all.map((pass) => passAt(pass, say)));

function legText(leg: ServiceParams['leg-long'], say: Say): string {
  const { measured } = say.compareFar(leg.measured, leg.limit);
  const at = leg.to === null ? '' : ` (en ${say.far(leg.end)})`;
  if (leg.from !== null && leg.from === leg.to) return `${say.race(leg.race)} vuelve aquí tras ${measured}${at}.`;
  const from = leg.from === null ? 'la salida' : leg.here === 'from' ? 'aquí' : say.station(leg.from);
  const to = leg.to === null ? 'la meta' : leg.here === 'to' ? 'aquí' : say.station(leg.to);
  return `${say.race(leg.race)} recorre ${measured} desde ${from} hasta ${to}${at}.`;
}

const WAY = { back: ' a la vuelta', other: ' en el otro sentido', again: ' otra vez' } as const;

const service: TextsOf<ServiceParams> = {
  'crosses-flow': ({ other, farther, sideUnclear, kerb }, say) => {
    if (kerb !== undefined)
      return [
        `${say.all(kerb.map(say.station))} atienden los dos sentidos de una vía desde el mismo bordillo: un sentido debe cruzar el otro.`,
        'Cada uno debe estar en el lado exterior de sus corredores.',
        'Pase uno al otro lado, o acuerde con los jueces y la policía cómo se separan los sentidos.',
      ];
    const who =
      farther === null
        ? `Vienen corredores en los dos sentidos de una vía (el otro: ${passes(other, say)}): unos deben cruzar a los otros.`
        : `Vienen corredores en los dos sentidos, y ${passes(farther.passes, say)}, ${say.length(farther.by)} más lejos de las mesas, deben cruzar a los otros.`;
    return [
      who,
      sideUnclear ? 'El lado no está claro: esto vale solo si las mesas quedan más allá de los dos sentidos.' : null,
      'Sirva en un solo sentido, o ponga mesas a ambos lados o entre los dos sentidos; deciden jueces y policía.',
    ];
  },
  'gel-without-water': ({ race, measure, next, within, waterBefore }, say) => {
    const { measured, limit } = say.compareFar(next ?? 0, within);
    const after = next === null ? 'ningún puesto posterior suyo la tiene' : `la siguiente está a ${measured}`;
    return [
      `${passAt({ race, measure }, say)} recibe aquí gel ${waterBefore ? 'después del agua' : 'pero no agua'}, y ${after}.`,
      `Después del gel debe haber agua, aquí o antes de ${limit}.`,
      'Sirva agua después, o pase el gel a otro puesto.',
    ];
  },
  'lead-far': ({ led, near, pass, time, taken }, say) => {
    const who = `${passAt(pass, say)}${time > 1 ? ` (la ${nth(time)} vez)` : ''}`;
    if (taken !== null)
      return [
        `Las mesas se montan para ${who}, porque ${taken === 'pin' ? 'el marcador está junto a ese sentido' : 'solo ese sentido tiene el marcador en el lado declarado'}.`,
        'El plan debe decir para qué sentido son.',
        'Elíjalo en Corredores.',
      ];
    return [
      `Las mesas se montan para corredores que pasan a ${say.length(led)} del marcador, pero ${who} pasa a solo ${say.length(near)}.`,
      null,
      'Elija en Corredores para qué sentido son las mesas.',
    ];
  },
  'leg-long': (leg, say) => [
    legText(leg, say),
    `Deben ser como mucho ${say.compareFar(leg.measured, leg.limit).limit}.`,
    'Añada un puesto en medio, o mueva uno.',
  ],
  'leg-short': (leg, say) => [
    legText(leg, say),
    `Deben ser al menos ${say.compareFar(leg.measured, leg.limit).limit}.`,
    leg.from === leg.to ? 'Sirva una sola vez, o muévalo.' : 'Mueva uno de los dos, o prescinda de uno.',
  ],
  'length-differs': ({ stated, line, allowed, recorded, wander, used, typed, waits = false }, say) => {
    const { measured, limit } = say.compare(Math.abs(line - stated), allowed);
    return [
      `La línea mide ${say.far(line)}, ${measured} ${line > stated ? 'más' : 'menos'} que los ${say.far(stated)} declarados${recorded ? ' (un track grabado suele salir largo)' : ''}.`,
      `${wander > 0 ? `La medición y las oscilaciones del track admiten ${limit}` : `La medición de recorridos admite ${limit}`}; ${used ? 'las distancias se estiran hasta la longitud declarada' : waits ? 'hasta que se corrija una, no se comprueba a quién atiende ni sus horarios' : 'con tanta diferencia no se usa la longitud declarada'}.`,
      typed === undefined
        ? 'Corrija la línea o la longitud; solo una medición en la vía homologa un recorrido.'
        : `Corrija la longitud, que parece escrita en ${typed === 'mi' ? 'millas en vez de kilómetros' : 'kilómetros en vez de millas'}; solo una medición en la vía homologa un recorrido.`,
    ];
  },
  'pass-unknown': ({ race, time, count }, say) =>
    count === 0
      ? [`El plan nombra un paso de ${say.race(race)}, que no pasa por aquí.`, null, 'Elija una carrera que pase.']
      : [
          `El plan nombra la ${nth(time)} vez que pasa ${say.race(race)}, pero pasa ${often(count)}.`,
          null,
          'Elija otra en Corredores.',
        ],
  'race-unserved': ({ length }, say) => [
    `Ningún puesto sirve a esta carrera en sus ${say.far(length)}.`,
    null,
    'Añádala a un puesto por el que pase, o quítela del plan.',
  ],
  'seen-not-served': ({ way, passes: seen }, say) => {
    const list = seen
      .slice(0, MOST_PASSES)
      .map((pass) => (way === 'again' ? `${passAt(pass, say)}, la ${nth(pass.time)} vez` : passAt(pass, say)));
    const left = seen.length - list.length;
    const rest = left === 0 ? '' : ` y ${say.count(left)} más`;
    return [
      `También pasan corredores${WAY[way]} (${list.join(way === 'again' ? '; ' : ', ')}${rest}) y no se les sirve.`,
      null,
      'Si es lo previsto, confírmelo en Corredores.',
    ];
  },
  'served-both-ways': ({ lead, other, passes: back }, say) => {
    const order = (kinds: ServiceParams['served-both-ways']['lead']): string =>
      kinds.map((kind) => say.itemInside(kind)).join(', luego ');
    return [
      `Se sirve en los dos sentidos: en uno encuentran ${order(lead)}; en el otro (${passes(back, say)}), ${order(other)}.`,
      null,
      'Ponga mesas propias para cada sentido, o indique al equipo que anuncie lo que hay en cada mesa.',
    ];
  },
  'side-change': ({ measured, limit, race, before, beforeSide, side }, say) => {
    const { measured: apart, limit: least } = say.compareFar(measured, limit);
    return [
      `${say.race(race)} tiene ${say.station(before)} a la ${say.side(beforeSide)} y, ${apart} después, este puesto a la ${say.side(side)}.`,
      `A menos de ${least} los dos deben estar en un mismo lado; si no, los corredores cruzan la vía para ambos.`,
      'Pase uno al otro lado, o sepárelos.',
    ];
  },
  'side-contradicted': ({ declared, side, offset, confidence, fits, turned }, say) => {
    if (turned?.against !== undefined)
      return [
        `${say.course(turned.course)} va en contra de los demás en ${say.count(turned.against.length)} puestos, y el marcador contradice el lado en ${some(turned.stations.map(say.station), say, (count) => `${say.count(count)} más`, 3)}.`,
        'Parece ir al revés: lo que resulta de ello no se comprueba aún.',
        'Dé la vuelta al recorrido en el plan, o corrija los lados.',
      ];
    if (turned !== null)
      return [
        `En ${say.count(turned.stations.length)} puestos de ${say.course(turned.course)} el marcador está en el lado contrario al declarado.`,
        'Casi todos sus lados están al revés: puede que el recorrido vaya en el otro sentido.',
        'Invierta el recorrido en el plan, o corrija los lados.',
      ];
    return [
      `Se declara a la ${say.side(declared)}, pero el marcador está ${say.length(Math.abs(offset))} a la ${say.side(side)}${confidence < 0.95 ? ` (${sure(confidence, say)})` : ''}.`,
      fits === null
        ? 'Vale el lado declarado.'
        : `Para ${passAt(fits, say)}, en el otro sentido, el marcador está a la ${say.side(declared)}.`,
      fits === null ? 'Corrija el que esté mal.' : 'Elija en Corredores para qué sentido son las mesas.',
    ];
  },
  'side-unclear': ({ offset, confidence, wanted, why, other, placed }, say) => {
    const { measured, limit } = say.comparePercent(confidence, wanted);
    if (placed)
      return [
        `Según el lado declarado, las mesas pueden quedar a cualquier lado de otro sentido (${passes(other ?? [], say)}).`,
        'Cada sentido debe tenerlas en un lado conocido.',
        'Ponga el marcador donde están las mesas, o atienda un solo sentido.',
      ];
    if (why === 'turn')
      return [
        'El recorrido gira tanto en el marcador que allí no tiene lados.',
        null,
        other === null ? 'Declare el lado, o aparte el marcador de la curva.' : 'Aparte el marcador de la curva.',
      ];
    if (other !== null)
      return [
        `El marcador está a ${say.length(Math.abs(offset))} de otro sentido (${passes(other, say)}): su lado es seguro solo al ${measured}.`,
        `Debe ser seguro al ${limit}.`,
        'Aparte el marcador de esa línea, o atienda un solo sentido.',
      ];
    return [
      `El marcador está a ${say.length(Math.abs(offset))} de la línea del recorrido: su lado es seguro solo al ${measured}, y todo queda sobre la línea.`,
      `Debe ser seguro al ${limit}.`,
      'Declare el lado, o aparte el marcador de la línea.',
    ];
  },
  'station-off-course': ({ measured, limit, course, measure, swapped }, say) => {
    const { measured: near, limit: most } = say.compare(measured, limit);
    const distance = measured < 1000 ? near : say.far(measured);
    return [
      `El marcador está a ${distance} del recorrido servido más cercano (${say.course(course)} en ${say.far(measure)}).`,
      `Debe estar como mucho a ${most}.`,
      swapped === null
        ? 'Mueva el marcador a la vía, o admita que un recorrido pase más lejos.'
        : `La longitud va primero: puede que los dos números estén cambiados (${swapped.join(', ')}).`,
    ];
  },
  'station-unserved': ({ beyondEnd }) => [
    beyondEnd
      ? 'No se sirve a nadie: el marcador está más allá de un extremo del recorrido.'
      : 'No se sirve a nadie: de las veces que pasan corredores no se ha elegido ninguna.',
    null,
    'Mueva el marcador junto al recorrido, o elija en Corredores a quién se sirve.',
  ],
  'waiver-unmatched': ({ waived, by, near }, say) => [
    `La exención de ${say.quote(waived)} que firma ${by} no corresponde a ningún aviso.`,
    null,
    near === undefined
      ? 'Quítela, o corrija su código o su puesto.'
      : `¿Quiso decir ${say.quote(near)}? Corrija su código, o quítela.`,
  ],
  'waiver-refused': ({ waived, by, lacks }, say) => [
    {
      by: `Una exención de ${say.quote(waived)} no nombra a nadie, así que no vale.`,
      reason: `La exención de ${say.quote(waived)} que firma ${by} no da ningún motivo con palabras, así que no vale.`,
      date: `La exención de ${say.quote(waived)} que firma ${by} no tiene fecha, así que no vale.`,
      earlierDate: `La exención de ${say.quote(waived)} que firma ${by} lleva fecha posterior a la carrera, así que no vale.`,
    }[lacks],
    null,
    {
      by: 'Dé el nombre de quien responde de ella.',
      reason: 'Diga por qué puede quedar así.',
      date: 'Dé el día en que se concedió.',
      earlierDate: 'Dé el día en que se concedió, anterior a la carrera.',
    }[lacks],
  ],
  'waiver-outgrown': ({ waived, by, worse }, say) => [
    worse
      ? `Lo que ${by} eximió como ${say.quote(waived)} ha empeorado en más de una décima parte.`
      : `La exención de ${say.quote(waived)} que firma ${by} se dio para otra cosa.`,
    'Ya no vale.',
    'Mírelo de nuevo; concédala otra vez o quítela.',
  ],
  'waiver-unbound': ({ waived, by }, say) => [
    `La exención de ${say.quote(waived)} que firma ${by} no dice qué se vio; vale para cualquier aviso de esa clase aquí.`,
    null,
    'Renuévela: quítela y exima el aviso de nuevo.',
  ],
};

export const review: TextsOf<ReviewParams> = {
  ...service,
  ...items,
  ...road,
  ...flows,
  ...ground,
  ...placing,
  ...times,
  ...absence,
};
