import { byProblem } from '../../byProblem.ts';
import type { RacedayParams } from '../../params/raceday.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { some, wordOf } from '../../some.ts';
import { crew } from './racedayCrew.ts';
import { minutesText } from '../../spans.ts';
import { supplyText } from '../../supplyWords.ts';
import { supplyWords } from '../supplyWords.ts';
import { results } from './racedayResults.ts';
import { weather } from './racedayWeather.ts';

const VEHICLE = 'Salga antes con el vehículo, abra antes el acceso, o añada un vehículo.';

const VEHICLES = 'Salga antes con los vehículos, abra antes el acceso, o añada un vehículo.';

/** So many stations are told by name. */
const places = (ids: readonly string[], say: Say): string =>
  some(ids.map(say.station), say, (count) => `${say.count(count)} puestos más`, 3);

const speedText = (kmh: number, say: Say): string =>
  say.units === 'metric' ? `${say.count(kmh)} km/h` : `${say.count(kmh / 1.609344)} mph`;

const more = (count: number, how: string, say: Say): string =>
  count === 1 ? '' : `, y ${count === 2 ? 'otro vehículo' : `otros ${say.count(count - 1)} vehículos`} ${how}`;

const TIMES = {
  accessOpens: 'cuándo se abre el acceso',
  closes: 'cuándo se cierra la vía',
  reopens: 'cuándo se reabre la vía',
} as const;

const HEAT = { cool: 'fresco', warm: 'templado', hot: 'caluroso' } as const;

const fields: Pick<
  TextsOf<RacedayParams>,
  | 'race-without-waves'
  | 'race-without-starters'
  | 'race-too-large'
  | 'race-without-times'
  | 'race-endless'
  | 'waves-overlap'
  | 'gradient-unknown'
  | 'gradient-too-steep'
  | 'cutoff-early'
  | 'sweep-impossible'
> = {
  'race-without-waves': () => [
    'La carrera no tiene salidas, así que no se pueden calcular las llegadas.',
    null,
    'Añada sus salidas, cada una con su hora y su número de inscritos.',
  ],
  'race-without-starters': ({ show }, say) => [
    `No sale nadie: las salidas no tienen inscritos, o muy pocos para el ${say.percent(show)} que sale.`,
    null,
    'Dé el número de inscritos de cada salida.',
  ],
  'race-too-large': ({ starters, most }, say) => [
    `En la carrera salen ${say.count(starters)} personas.`,
    `Deben ser ${say.count(most)} como máximo.`,
    'Corrija el número de inscritos de sus salidas.',
  ],
  'race-without-times': ({ wave }) => [
    `La salida n.º ${wave} no tiene tiempos de meta, así que no se pueden calcular las llegadas.`,
    null,
    'Dé una mediana con dispersión, proporciones con tiempos, una lista de tiempos, o un archivo CSV con su columna.',
  ],
  'race-endless': ({ after, most }, say) => [
    after === null
      ? 'El último corredor no llegaría nunca a meta.'
      : `El último corredor llegaría a meta ${say.duration(after)} después de la primera salida.`,
    `Deben ser ${say.duration(most)} como máximo, una semana.`,
    'Corrija los tiempos de meta (una dispersión es de unos 0.2), el flujo de salida o las horas de salida.',
  ],
  'waves-overlap': ({ wave, until, next, flow }, say) => [
    `La salida de las ${say.clock(wave)} cruza la línea hasta las ${say.clock(until)}, a ${say.count(flow)} por minuto, pero la siguiente sale a las ${say.clock(next)}.`,
    'Se supone que ambas cruzan a la vez.',
    'Retrase la siguiente salida, o dé el flujo que tiene la línea de salida.',
  ],
  'gradient-unknown': ({ course }, say) => [
    `Se pide el ritmo según la pendiente, pero ${say.course(course)} no tiene altitudes.`,
    'El ritmo se calcula como en llano.',
    'Use un archivo GPX con altitudes, o desactive el ritmo según la pendiente.',
  ],
  'gradient-too-steep': ({ course, grade, most }, say) => {
    const { measured, limit } = say.comparePercent(Math.abs(grade), most);
    return [
      `${say.course(course)} tiene una pendiente del ${measured}, mayor que el ${limit} hasta el que se conoce el ritmo.`,
      'El ritmo se calcula como en llano.',
      'Corrija las altitudes, o desactive el ritmo según la pendiente.',
    ];
  },
  'cutoff-early': ({ cutoff, start }, say) => [
    `La hora de cierre, a las ${say.clock(cutoff)}, no es posterior a la última salida: los últimos cruzan la línea a las ${say.clock(start)}.`,
    'Mientras no se corrija, se supone que el coche escoba no recoge a nadie.',
    'Corrija la hora de cierre o las horas de salida.',
  ],
  'sweep-impossible': byProblem({
    early: ({ leaves, wave }, say) => [
      `El coche escoba sale a las ${say.clock(leaves)}, antes de la última salida, a las ${say.clock(wave)}.`,
      'No se tiene en cuenta, y se supone que no recoge a nadie.',
      'Corrija la hora de cierre de la carrera o los horarios del coche escoba.',
    ],
    backwards: ({ from, to, course }, say) => [
      to.is === 'cutoff'
        ? `El coche escoba está en ${say.far(from.measure)} de ${say.course(course)} a las ${say.clock(from.time)}, pero la meta (${say.far(to.measure)}) cierra a las ${say.clock(to.time)}.`
        : from.is === 'start'
          ? `El coche escoba está en ${say.far(to.measure)} de ${say.course(course)} a las ${say.clock(to.time)}, pero los últimos salen a las ${say.clock(from.time)}.`
          : `En ${say.course(course)} el coche escoba está en ${say.far(from.measure)} a las ${say.clock(from.time)} y en ${say.far(to.measure)} a las ${say.clock(to.time)}.`,
      'Debe pasar más tarde más adelante; mientras tanto no se tiene en cuenta, y se supone que no recoge a nadie.',
      'Corrija la hora de cierre de la carrera o los horarios del coche escoba.',
    ],
  }),
};

const stations: Pick<
  TextsOf<RacedayParams>,
  'heat-steps' | 'heat-assumed' | 'gels-short' | 'pre-pour-room' | 'cups-run-out' | 'station-no-arrivals'
> = {
  'heat-steps': ({ steps: [first, second] }, say) => [
    `Los umbrales de calor son ${say.found(first)} y ${say.found(second)} °C.`,
    'El menor debe ir primero; hasta entonces puede haber vasos de menos.',
    'Intercámbielos.',
  ],
  'heat-assumed': ({ assumed, wbgtC }, say) => [
    wbgtC === undefined
      ? `No se da el nivel de calor, así que los vasos se calculan para tiempo ${wordOf(HEAT, assumed)}.`
      : `Se da una temperatura de ${say.found(wbgtC)} °C sin umbrales, así que los vasos se calculan para tiempo ${wordOf(HEAT, assumed)}.`,
    null,
    'Dé un nivel de calor (fresco, templado o caluroso), o una temperatura de globo y bulbo húmedo con umbrales.',
  ],
  'gels-short': ({ ordered, taken, each }, say) => [
    `Se piden ${say.count(ordered)} geles y se espera que se tomen ${say.count(taken)}: faltan ${say.count(taken - ordered)}.`,
    null,
    `Pida más de ${say.found(each)} geles por corredor.`,
  ],
  'pre-pour-room': ({ drink, tables, hold, wanted, more, pourers, all }, say) => [
    `En ${tables === 1 ? 'la mesa' : `las ${say.count(tables)} mesas`} ${all === undefined ? '' : `de ${say.station(all[0]!.station)} `}caben ${say.count(hold)} vasos de ${say.served(drink)}.`,
    all === undefined
      ? `Antes del primer corredor deben estar servidos ${say.count(wanted)}: ${say.count(wanted - hold)} más.`
      : `Antes del primer corredor deben estar servidos ${say.count(wanted)}; también faltan mesas en ${all.length === 2 ? 'otro caso' : `otros ${say.count(all.length - 1)} casos`}.`,
    `Ponga ${more === 1 ? '1 mesa más' : `${say.count(more)} mesas más`}${
      pourers === undefined ? '' : `, o haga que ${say.count(pourers)} personas sirvan ${say.served(drink)}`
    }.`,
  ],
  'cups-run-out': ({ drink, at, short, hold, pourers }, say) => [
    `Los vasos servidos de ${say.served(drink)} se acaban a las ${say.clock(at)}; en ese minuto faltan ${say.count(short)}.`,
    `En las mesas caben ${say.count(hold)} y se reponen demasiado despacio.`,
    `Ponga más mesas, o haga que ${say.count(pourers)} personas sirvan ${say.served(drink)}.`,
  ],
  'station-no-arrivals': ({ problem }) => [
    problem === 'unpassed'
      ? 'No pasa por aquí ninguna carrera que atienda este puesto.'
      : 'No llega nadie de las carreras que atiende este puesto.',
    'No se calculan vasos, equipo ni carga para él.',
    'Dé a las carreras salidas con inscritos, o cambie lo que atiende el puesto.',
  ],
};

export const raceday: TextsOf<RacedayParams> = {
  ...fields,
  ...results,
  ...stations,
  ...crew,
  ...weather,
  'drop-closed': ({ kg, vehicle, late, stations: all }, say) => [
    all === undefined
      ? `No se pueden entregar ${say.mass(kg)}: ${vehicle} estaría ${minutesText(late)} en la vía cerrada, en el puesto o antes de él.`
      : `No se pueden entregar ${say.mass(kg)} en ${places(all, say)}: los vehículos estarían hasta ${minutesText(late)} en la vía cerrada.`,
    null,
    all === undefined ? VEHICLE : VEHICLES,
  ],
  'drop-late': ({ vehicle, done, due, stations: all }, say) => [
    `${vehicle} termina de descargar ${all === undefined ? '' : `en ${say.station(all[0]!)} `}a las ${say.clock(done)}, ${minutesText(done - due)} tarde.`,
    all === undefined
      ? `El equipo llega a las ${say.clock(due)}.`
      : `El equipo llega allí a las ${say.clock(due)}; también se descarga tarde en ${all.length === 2 ? 'otro puesto' : `otros ${say.count(all.length - 1)} puestos`}.`,
    all === undefined ? VEHICLE : VEHICLES,
  ],
  'vehicle-doubtful': byProblem({
    light: ({ vehicle, kg, trips, used, count }, say) => [
      `${vehicle} solo lleva ${say.mass(kg)}${more(count, 'tampoco más', say)}: lo que necesita un puesto exigiría ${say.count(trips)} viajes.`,
      used ? null : `Los viajes se planifican sin ${count === 1 ? 'él' : 'ellos'}.`,
      count === 1 ? 'Corrija su carga útil, o quítelo.' : 'Corrija sus cargas útiles, o quítelos.',
    ],
    fast: ({ vehicle, kmh, most, count }, say) => [
      `${vehicle} iría por el recorrido a ${speedText(kmh, say)}${more(count, 'también demasiado rápido', say)}.`,
      `Debe ser como mucho a ${speedText(most, say)}.`,
      count === 1 ? 'Corrija su velocidad.' : 'Corrija sus velocidades.',
    ],
  }),
  'load-too-heavy': ({ supply, kg, most }, say) => {
    const { measured, limit } = say.compareMass(kg, most);
    return [
      `El peso de cada ${supplyText(supply, supplyWords)} es de ${measured}, y el vehículo más fuerte lleva ${limit}.`,
      'No va en ningún viaje.',
      'Corrija su peso, o la carga útil del vehículo.',
    ];
  },
  'clock-missing': ({ course, times }, say) => [
    `Los horarios de la vía no dicen ${say.any(times.map((one) => TIMES[one]))} en ${say.course(course)}.`,
    'Los viajes se planifican como si no hubiera límite.',
    'Añada los horarios que conceda la autoridad de la vía.',
  ],
  'vehicles-missing': ({ stations: count, kg }, say) => [
    `No hay vehículo para los ${say.mass(kg)} que ${count === 1 ? 'necesita un puesto' : `necesitan ${say.count(count)} puestos`}, así que no se planifican viajes.`,
    null,
    'Añada vehículos, cada uno con su carga útil, cargas que caben, velocidad, tiempo de parada y hora de carga.',
  ],
  'drop-nowhere': () => [
    'Ningún recorrido pasa por el puesto, así que no se entrega nada allí.',
    null,
    'Corrija primero su lugar.',
  ],
};
