/** What the checks of times and closures say. */
import type { ClockFault, ClockTime, LateCrew, RoadAt, TimeParams } from '../../params/reviewTimes.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { minutesText } from '../../spans.ts';

/** "en Strand Road (11.20 km)", "en 12.00 km de Full". */
const atPlace = ({ course, measure, station }: RoadAt, say: Say): string =>
  station === null
    ? `en ${say.far(measure)} de ${say.course(course)}`
    : `en ${say.station(station)} (${say.far(measure)})`;

const places = (count: number, say: Say): string =>
  count === 0 ? '' : `, aquí y en ${count === 1 ? 'otro lugar' : `otros ${say.count(count)} lugares`}`;

const WHEN = { closes: 'cuándo se corta', reopens: 'cuándo se reabre' } as const;

const HAPPENS: { readonly [key in ClockTime]: string } = {
  accessOpens: 'se abre el acceso',
  closes: 'se corta la vía',
  sweep: 'pasa el coche escoba',
  reopens: 'se reabre la vía',
};

function faultText(fault: ClockFault, course: string, say: Say): string {
  if (fault.is === 'falls') {
    const { key, from, to } = fault;
    return `En ${say.course(course)} ${wordOf(HAPPENS, key)} a las ${say.clock(to.time)} en ${say.far(to.measure)}, antes que a las ${say.clock(from.time)} en ${say.far(from.measure)}.`;
  }
  if (fault.is === 'cutoff')
    return `${say.race(fault.race)} cierra a las ${say.clock(fault.cutoff)}, pero en la meta ${wordOf(HAPPENS, fault.key)} a las ${say.clock(fault.time)}.`;
  const { measure, before, after } = fault;
  return `En ${say.far(measure)} de ${say.course(course)} ${wordOf(HAPPENS, after.key)} a las ${say.clock(after.time)}, antes de que ${wordOf(HAPPENS_LATER, before.key)} a las ${say.clock(before.time)}.`;
}

/** As it follows "antes de que". */
const HAPPENS_LATER: { readonly [key in ClockTime]: string } = {
  accessOpens: 'se abra el acceso',
  closes: 'se corte la vía',
  sweep: 'pase el coche escoba',
  reopens: 'se reabra la vía',
};

function lateText({ station, crewAt, before, race }: LateCrew, say: Say): string {
  const due = `El equipo de ${say.station(station)} llega a las ${say.clock(crewAt)}`;
  return before.is === 'closes'
    ? `${due}, después del corte de la vía a las ${say.clock(before.time)}.`
    : `${due}, después del primero de ${say.race(race!)} a las ${say.clock(before.time)}.`;
}

export const times: TextsOf<TimeParams> = {
  'closes-late': ({ places: all }, say) => {
    const [{ closes, race, first, ...place }] = all as readonly [(typeof all)[0]];
    return [
      `La vía ${atPlace(place, say)} se corta a las ${say.clock(closes)}, ${minutesText(closes - first)} después del primero de ${say.race(race)} a las ${say.clock(first)}.`,
      `Debe estar cortada al tráfico antes del primer corredor o del primero sobre ruedas${places(all.length - 1, say)}.`,
      'Córtela antes o salga más tarde, según decidan la autoridad de tráfico y la policía.',
    ];
  },
  'reopens-early': ({ places: all }, say) => {
    const [{ reopens, race, last, clear, ...place }] = all as readonly [(typeof all)[0]];
    const wait = clear === 0 ? '' : ` y el equipo haya tenido ${say.duration(clear)} para recoger`;
    return [
      `La vía ${atPlace(place, say)} se reabre a las ${say.clock(reopens)}; el último de ${say.race(race)}, o su coche escoba, pasa a las ${say.clock(last)}.`,
      `Debe seguir cortada hasta que pasen todos${wait}${places(all.length - 1, say)}.`,
      'Reábrala más tarde, o pida una hora de cierre más temprana.',
    ];
  },
  'clock-order': ({ course, faults }, say) => [
    faultText(faults[0]!, course, say),
    faults[0]!.is === 'cutoff'
      ? faults[0]!.key === 'reopens'
        ? 'La vía debe seguir cortada hasta la hora de cierre, y algo más.'
        : 'El coche escoba no debe recoger a nadie que aún pueda llegar antes de la hora de cierre.'
      : `Cada lugar debe abrirse, cortarse, barrerse y reabrirse en este orden, y más adelante más tarde${
          faults.length === 1
            ? ''
            : `, y falla en ${faults.length === 2 ? 'un caso más' : `${say.count(faults.length - 1)} casos más`}`
        }.`,
    faults[0]!.is === 'cutoff'
      ? 'Corrija la hora de cierre o los horarios de la vía.'
      : 'Corrija los horarios de la vía; los cortes se comprueban después.',
  ],
  'clock-beyond': ({ course, measure, start, length, count }, say) => {
    const past = measure > length;
    const { measured, limit } = say.compareFar(measure, past ? length : start);
    return [
      `Hay horarios de la vía en ${measured} de ${say.course(course)}, que ${past ? 'mide' : 'empieza en'} ${limit}.`,
      `Deben estar en el recorrido${count === 1 ? '' : `, y ${count === 2 ? 'otro horario no lo está' : `otros ${say.count(count - 1)} horarios no lo están`}`}.`,
      'Corrija la distancia, o el recorrido.',
    ];
  },
  'clock-short': ({ course, end, keys, measure, left }, say) => [
    `Los horarios de la vía de ${say.course(course)} ${end === 'finish' ? 'acaban' : 'empiezan'} en ${say.far(measure)}: no se sabe ${say.all(keys.map((key) => WHEN[key]))} en los ${end === 'finish' ? 'últimos' : 'primeros'} ${say.far(left)}.`,
    'Allí no se comprueban los cortes, y los viajes se planifican como en el horario más cercano.',
    `Añada los horarios de la ${end === 'finish' ? 'meta' : 'salida'}.`,
  ],
  'crew-late': ({ stations }, say) => [
    lateText(stations[0]!, say),
    `Debe estar allí antes de las dos cosas${
      stations.length === 1
        ? ''
        : `, y también el de ${stations.length === 2 ? 'otro puesto' : `otros ${say.count(stations.length - 1)} puestos`}`
    }.`,
    'Dé al equipo más tiempo de montaje, o acuerde con la policía cómo entra.',
  ],
  'cutoff-stops-many': ({ race, stopped, starters, most }, say) => [
    `El coche escoba detendría a unos ${say.count(stopped)} de ${say.count(starters)} en ${say.race(race)}.`,
    `Debe ser como mucho el ${say.percent(most)}.`,
    'Retrase la hora de cierre, salga antes, o prevea su transporte y admítalo con una exención.',
  ],
  'slow-wave-first': ({ slow, fast, apart }, say) => [
    `La salida de las ${say.clock(fast.wave)} de ${say.race(fast.race)} es un ${say.percent(Math.round((fast.speed / slow.speed - 1) * 100) / 100)} más rápida que la de las ${say.clock(slow.wave)} de ${say.race(slow.race)}, ${minutesText(apart)} antes por la misma vía.`,
    'La más rápida debe salir antes, o mucho después.',
    'Intercambie las salidas, o sepárelas más.',
  ],
  'speed-impossible': (params, say) => [
    params.is === 'fast'
      ? `El más rápido de ${say.race(params.race)} ${params.typed === true ? 'tiene' : 'tardaría'} ${say.duration(params.time)} en ${say.far(params.length)}; la mejor marca mundial es de unos ${say.duration(params.best)}.`
      : `El más lento de ${say.race(params.race)} ${params.typed === true ? 'tiene' : 'tardaría'} ${say.duration(params.time)} en ${say.far(params.length)}; andando despacio se tarda ${say.duration(params.most)}.`,
    null,
    'Revise los tiempos de meta, la modalidad y la longitud del recorrido.',
  ],
  'crowded-road': ({ runners, most, over, width, at, races }, say) => [
    `A las ${say.clock(at)} habría unas ${say.count(runners)} personas de ${say.all(races.map((race) => say.race(race)))} en ${say.length(over)} de vía junto a las mesas, de ${say.length(width)} de ancho.`,
    `Con más de ${say.count(most)} nadie puede elegir su ritmo.`,
    'Reparta la salida en más tandas, o use una vía más ancha.',
  ],
};
