import { byProblem } from '../../byProblem.ts';
import type { RacedayParams } from '../../params/raceday.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { supplyText } from '../../supplyWords.ts';
import { supplyWords } from '../supplyWords.ts';
import { results } from './racedayResults.ts';
import { weather } from './racedayWeather.ts';

/** Una tardanza, hacia arriba en minutos enteros: "12 min". */
const minutes = (seconds: number, say: Say): string => say.duration(Math.max(60, Math.ceil(seconds / 60 - 1e-6) * 60));

const VEHICLE = 'Salga antes con el vehículo, abra antes el acceso, o añada un vehículo.';

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
    backwards: ({ from, to }, say) => [
      `El coche escoba está en ${say.far(from.measure)} a las ${say.clock(from.time)} y en ${say.far(to.measure)} a las ${say.clock(to.time)}.`,
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
  'pre-pour-room': ({ drink, tables, hold, wanted, more, pourers }, say) => [
    `En ${tables === 1 ? 'la mesa' : `las ${say.count(tables)} mesas`} caben ${say.count(hold)} vasos de ${say.served(drink)}.`,
    `Antes del primer corredor deben estar servidos ${say.count(wanted)}: ${say.count(wanted - hold)} más.`,
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
  ...weather,
  'drop-closed': ({ kg, vehicle, late }, say) => [
    `No se pueden entregar ${say.mass(kg)}: ${vehicle} estaría ${minutes(late, say)} en la vía cerrada, en el puesto o antes de él.`,
    null,
    VEHICLE,
  ],
  'drop-late': ({ vehicle, done, due }, say) => [
    `${vehicle} termina de descargar a las ${say.clock(done)}, ${minutes(done - due, say)} tarde.`,
    `El equipo llega a las ${say.clock(due)}.`,
    VEHICLE,
  ],
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
