/** What the checks say of what a plan leaves out, and of slips in it. */
import type { AbsenceParams, Contact, LooseRule, RuleName } from '../../params/reviewAbsence.ts';
import type { Say } from '../../say.ts';
import { some, wordOf } from '../../some.ts';
import type { TextsOf } from '../../sentence.ts';
import { aPoint, begin } from '../nouns.ts';
import { planThings } from '../planThings.ts';

const CONTACTS: { readonly [key in Contact]: string } = {
  emergency: 'contacto de emergencia',
  raceControl: 'control de carrera',
  radioChannel: 'canal de radio',
};

const HEAT = { cool: 'fresco', warm: 'templado', hot: 'caluroso' } as const;

const WHATS = { captain: 'el responsable', radio: 'el indicativo', phone: 'el teléfono' } as const;

const left =
  (say: Say) =>
  (count: number): string =>
    `${say.count(count)} más`;
const names = (list: readonly string[], say: Say): string => some(list, say, left(say));

const isCrew = (rule: RuleName): boolean => rule === 'pourers' || rule === 'minimum';

function ruleValue({ rule }: LooseRule, value: number, say: Say): string {
  if (isCrew(rule)) return say.count(value);
  if (rule === 'sideConfidence' || rule === 'maxGrade') return say.percent(value);
  return rule === 'maxSpacing' || rule === 'minSpacing' ? say.far(value) : say.length(value);
}

function looseText(loose: LooseRule, say: Say): string {
  const where = loose.station === null ? '' : ` en ${say.station(loose.station)}`;
  return `${wordOf(planThings, `${isCrew(loose.rule) ? 'crew' : 'practice'}.${loose.rule}`)}${where}, ${ruleValue(loose, loose.value, say)} (lo habitual, ${ruleValue(loose, loose.usual, say)})`;
}

/** So many rules are told one by one; the details have all. */
const MOST_RULES = 2;

export const absence: TextsOf<AbsenceParams> = {
  'no-medical': ({ none, courses }, say) => [
    none
      ? 'El plan no tiene ningún punto médico.'
      : `No hay ningún punto médico en la segunda mitad de ${names(courses.map(say.course), say)}.`,
    null,
    'Añádalos en Puntos según el responsable médico, en ambas mitades del recorrido.',
  ],
  'no-widths': ({ all, stations }, say) => [
    all
      ? 'Ningún puesto indica el ancho de su vía.'
      : `Falta el ancho de la vía en ${names(stations.map(say.station), say)}.`,
    'Sin él no se comprueba el sitio junto a las mesas, para los corredores y las ambulancias.',
    'Mídalo y añádalo.',
  ],
  'no-elevations': ({ courses }, say) => [
    `No hay altitudes en ${names(courses.map(say.course), say)}.`,
    'Sin ellas no se comprueban las pendientes junto a las mesas ni las bajadas fuertes.',
    'Use un archivo GPX con altitudes.',
  ],
  'no-entrants': ({ races, all }, say) => [
    all
      ? 'El plan no dice quién corre ni cuándo.'
      : `El plan no dice quién corre ${names(races.map(say.race), say)} ni cuándo.`,
    'Sin ello no se comprueban horarios, cortes, aglomeraciones, vasos, equipos ni material.',
    'Añada las salidas, cada una con su hora y su número de inscritos.',
  ],
  'no-contacts': ({ missing }, say) => [
    `El plan no tiene ${say.any(missing.map((key) => wordOf(CONTACTS, key)))}.`,
    'Los equipos deben saber a quién llamar.',
    missing.length === 1 ? 'Añádalo en Contactos.' : 'Añádalos en Contactos.',
  ],
  'roster-short': ({ there, at, needed }, say) => [
    `De la lista ${there === 0 ? 'no hay nadie' : there === 1 ? 'hay 1 persona' : `hay ${say.count(there)} personas`} a las ${say.clock(at)}: ${needed - there === 1 ? 'falta' : 'faltan'} ${say.count(needed - there)}.`,
    `Debería haber ${say.count(needed)} mientras el puesto atiende.`,
    'Busque a más personas, o cambie las horas de quienes vienen.',
  ],
  'no-captain': ({ all, unnamed, unreached }, say) => {
    const reach = `no hay cómo llamar al responsable en ${names(unreached.map(say.station), say)}`;
    const who = `No hay responsable en ${names(unnamed.map(say.station), say)}`;
    const both = unreached.length === 0 ? `${who}.` : `${who}, y ${reach}.`;
    const named = all
      ? 'Dé a cada puesto un responsable con su indicativo o su teléfono.'
      : unnamed.length + unreached.length === 1
        ? 'Nombre uno, con su indicativo o su teléfono.'
        : 'Dé a cada uno un responsable con su indicativo o su teléfono.';
    const howToReach =
      unnamed.length === 0
        ? `Dé ${unreached.length === 1 ? 'a ese responsable' : 'a cada uno'} un indicativo o un teléfono.`
        : named;
    return [
      all ? 'Ningún puesto tiene responsable.' : unnamed.length === 0 ? `${begin(reach)}.` : both,
      null,
      howToReach,
    ];
  },
  'shared-contact': ({ what, value, stations }, say) => [
    `${names(stations.map(say.station), say)} comparten a la vez ${wordOf(WHATS, what)} ${say.quote(value)}.`,
    'Cada puesto debe tener el suyo.',
    'Corríjalo, o ponga otro.',
  ],
  'no-water': ({ races, dry = null }, say) => {
    if (dry !== null) {
      const { measured, limit } = say.compareFar(dry.length, dry.limit);
      return [
        `${names(races.map(say.race), say)} corre ${measured} sin agua sola (hasta ${say.far(dry.end)}).`,
        `Deben ser como mucho ${limit}.`,
        'Sirva agua en un puesto intermedio.',
      ];
    }
    return [
      `No hay agua sola en el recorrido de ${names(races.map(say.race), say)}.`,
      'Toda carrera debe encontrarla.',
      'Sirva agua en un puesto por el que pase.',
    ];
  },
  'same-name': ({ name, count }, say) => [
    `${count === 2 ? 'Dos' : say.count(count)} puestos se llaman ${say.quote(name)}.`,
    'Los equipos y el control de carrera distinguen los puestos por su nombre.',
    'Cambie el nombre de uno.',
  ],
  'name-distance': ({ said, race, measure }, say) => [
    `El nombre dice ${say.far(said)}, pero ${say.race(race)} pasa en ${say.far(measure)}.`,
    null,
    'Corrija el nombre o el sitio.',
  ],
  'far-from-courses': ({ things, limit }, say) => {
    const [{ is, name, station, distance, swapped }] = things as readonly [(typeof things)[0]];
    const what = `${is === 'zone' ? 'La zona' : 'El punto'} ${name === '' ? '' : `${say.quote(name)} `}${station === null ? '' : `de ${say.station(station)} `}`;
    const rest = things.length - 1;
    return [
      `${what}está a ${say.far(distance)} del recorrido más cercano${rest === 0 ? '' : `, y ${say.count(rest)} más ${rest === 1 ? 'está' : 'están'} lejos`}.`,
      `Debe estar como mucho a ${say.far(limit)}.`,
      swapped
        ? 'La longitud va primero: puede que los dos números estén cambiados.'
        : 'Corrija su posición, o quítelo del plan.',
    ];
  },
  'zone-large': ({ zone, across, limit }, say) => {
    const { measured, limit: most } = say.compareFar(across, limit);
    return [
      `${zone === '' ? 'Una zona' : `La zona ${say.quote(zone)}`} mide ${measured} de lado a lado.`,
      `Debe medir como mucho ${most}.`,
      'Corrija el vértice que está lejos (la longitud va primero).',
    ];
  },
  'points-elsewhere': ({ point, count, other, away }, say) => [
    `${begin(aPoint(point, say))}${count === 1 ? ' está' : ` y ${say.count(count - 1)} ${count === 2 ? 'punto' : 'puntos'} más están`} a ${say.far(away)}, en ${say.station(other)}.`,
    'Los puntos de un puesto deben estar cerca de sus mesas.',
    'Corrija los puntos o el marcador, o intercambie los de los dos puestos.',
  ],
  'rule-loose': ({ rules, hidden, absurd = false, grave }, say) => [
    `${absurd ? 'Inverosímil' : 'Más laxo de lo habitual'}: ${some(
      rules.map((loose) => looseText(loose, say)),
      say,
      left(say),
      MOST_RULES,
    )}.`,
    hidden === 0
      ? null
      : `Con los valores habituales hay ${hidden === 1 ? 'un error o advertencia' : `${say.count(hidden)} errores o advertencias`} más.`,
    absurd
      ? 'Ninguna vía es así: corríjalo.'
      : hidden === 0 && grave !== true
        ? null
        : 'Vuelva a lo habitual, o acuérdelo y admítalo con una exención.',
  ],
  'show-low': ({ race, show, least }, say) => [
    `Solo se espera que salga el ${say.percent(show)} de los inscritos de ${say.race(race)}.`,
    `Debe ser al menos el ${say.percent(least)}: vasos, equipos y aglomeraciones se calculan para quienes salen.`,
    'Corrija la proporción, o admítalo con una exención.',
  ],
  'heat-doubtful': (params, say) => {
    const where = params.station === null ? '' : ` en ${say.station(params.station)}`;
    if (params.is === 'beyond')
      return [
        `La temperatura de globo y bulbo húmedo${where} es de ${say.found(params.wbgtC)} °C.`,
        `Debe ser como mucho de ${say.found(params.most)} °C: puede estar en grados Fahrenheit.`,
        'Corríjala.',
      ];
    return [
      `El nivel de calor${where} es ${wordOf(HEAT, params.heat)}, pero ${say.found(params.wbgtC)} °C de globo y bulbo húmedo es ${wordOf(HEAT, params.asks)}.`,
      'Los vasos se calculan para el nivel, así que puede haber de menos.',
      'Corrija uno de los dos; sobre el calor decide el responsable médico.',
    ];
  },
  'no-date': ({ waivers }, say) => [
    'El plan no tiene fecha.',
    waivers === 0
      ? 'Los papeles no muestran el día, y no se comprueban fechas.'
      : `Los papeles no muestran el día, y no se ${waivers === 1 ? 'comprueba la fecha de la exención' : `comprueban las fechas de ${say.count(waivers)} exenciones`}.`,
    'Añada la fecha de la carrera.',
  ],
  'walked-date': ({ is, stations, date }, say) => [
    `Se ${stations.length === 1 ? 'visitó' : 'visitaron'} ${names(
      stations.map(({ station }) => say.station(station)),
      say,
    )} el ${stations[0]!.date}${stations.length === 1 ? '' : ' y otros días'}, ${
      is === 'after' ? 'después de la carrera' : 'años antes de la carrera'
    } (${date}).`,
    null,
    is === 'after' ? 'Corrija la fecha.' : 'Vuelva a visitar el sitio, o corrija la fecha.',
  ],
  'tables-many': ({ stations }, say) => {
    const [{ station, item, tables, needed }] = stations as readonly [(typeof stations)[0]];
    const rest = stations.length - 1;
    return [
      `En ${say.station(station)} hay ${say.count(tables)} mesas de ${say.served(item)}${rest === 0 ? '' : `, y ${say.count(rest)} ${rest === 1 ? 'fila más es' : 'filas más son'} igual de largas`}.`,
      `Para quienes vienen bastarían unas ${say.count(needed)}.`,
      'Corrija el número de mesas, si no es intencionado.',
    ];
  },
  'boxes-tight': ({ boxes, apart, least, stations }, say) => [
    `${stations.length === 1 ? '' : `En ${names(stations.map(say.station), say)} hasta `}${say.count(boxes)} contenedores estarían cada ${say.compare(apart, least).measured}, unos sobre otros.`,
    `Debe haber al menos ${say.compare(apart, least).limit} de uno a otro.`,
    'Ponga menos, o repártalos en más distancia.',
  ],
  'supplies-short': ({ by, short }, say) => {
    const [{ station, item, ordered, asked }] = short as readonly [(typeof short)[0]];
    const pieces = item === 'gel' ? 'geles' : `vasos de ${say.served(item)}`;
    const rest = short.length - 1;
    return [
      `Para ${say.station(station)} se piden ${say.count(ordered)} ${pieces}; ${
        by === 'used' ? `antes se usaron ${say.count(asked)}` : `el calor del día exige ${say.count(asked)}`
      }.`,
      rest === 0
        ? null
        : `${rest === 1 ? 'Otro pedido es escaso' : `Otros ${say.count(rest)} pedidos son escasos`} también.`,
      by === 'used'
        ? 'Suba las tasas de consumo, o anote por qué bastan menos.'
        : 'Suba las tasas de consumo a las de ese calor.',
    ];
  },
  'drop-far': (params, say) => {
    const point = params.name === null ? 'El punto de entrega de material' : say.quote(params.name);
    if (params.is === 'zone')
      return [
        `${point} está en la zona que debe quedar libre ${params.zone === '' ? '' : say.quote(params.zone)}`.trimEnd() +
          '.',
        'Allí no puede haber nada, tampoco un camión.',
        'Cámbielo de sitio.',
      ];
    const { measured, limit } = say.compare(params.distance, params.limit);
    return [
      `${point} está a ${measured} de las mesas, en línea recta.`,
      `Debe estar como mucho a ${limit}, porque todo se lleva a mano.`,
      'Acérquelo, o prevea carros y más gente y admítalo con una exención.',
    ];
  },
};
