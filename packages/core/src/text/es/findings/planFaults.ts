/** Valores de un plan que no se pueden usar, y referencias que no llevan a nada. */
import { byProblem } from '../../byProblem.ts';
import type { PlanParams } from '../../params/plan.ts';
import type { TextsOf } from '../../sentence.ts';
import { acceptedHint, acceptedText, choiceText, isStated, nameOf, startOf, suggested } from '../planValues.ts';

export const planValue: TextsOf<PlanParams>['plan-value'] = byProblem({
  value: ({ found, accepted, ...thing }, say) => [
    isStated(found) ? `${startOf(thing)} es ${say.found(found)}.` : `Falta ${nameOf(thing)}.`,
    `Debe ser ${acceptedText(accepted, found, say)}.`,
    acceptedHint(accepted, say),
  ],
  noSuchDay: ({ found, ...thing }, say) => [
    `${startOf(thing)} es ${say.found(found)}, un día que no existe en el calendario.`,
  ],
  latitude: ({ found, swapped, ...thing }, say) => [
    `${startOf(thing)} tiene la latitud ${say.found(found)}.`,
    'Debe estar entre -90 y 90.',
    swapped === true ? 'Primero va la longitud: puede que estén cambiadas.' : null,
  ],
  longitude: ({ found, ...thing }, say) => [
    `${startOf(thing)} tiene la longitud ${say.found(found)}.`,
    'Debe estar entre -180 y 180.',
  ],
  elevation: ({ found, range, ...thing }, say) => [
    `${startOf(thing)} tiene la altitud ${say.found(found)} m.`,
    `Debe ser de ${say.bounds('length', range)}.`,
  ],
  tooManyEntrants: ({ entrants, most }, say) => [
    `Todas las salidas juntas tienen ${say.count(entrants)} inscritos.`,
    `Debe haber ${say.count(most)} como máximo.`,
  ],
  markUnplaced: (thing) => [
    `${startOf(thing)} no tiene lugar.`,
    'Debe tenerlo, o el nombre de un punto del archivo GPX que diga una distancia.',
  ],
  markUnmeasured: (thing, say) => [
    `${startOf(thing)} no tiene distancia del recorrido.`,
    `Debe tenerla, o un nombre como ${say.quote('10 km')}.`,
  ],
  firstShare: ({ found }, say) => [
    `La primera proporción es ${say.found(found)}.`,
    'Debe ser 0, la del más rápido en meta.',
  ],
  lastShare: ({ found }, say) => [
    `La última proporción es ${say.found(found)}.`,
    'Debe ser 1, la del más lento en meta.',
  ],
  shareFalls: ({ found, before }, say) => [
    `La proporción ${say.found(found)} viene después de ${say.found(before)}.`,
    'Las proporciones deben subir de una entrada a la siguiente.',
  ],
  timeFalls: () => [
    'Este tiempo de meta es menor que el anterior.',
    'Los tiempos no deben bajar de una entrada a la siguiente.',
  ],
  rangeUpsideDown: ({ low, from, to, ...thing }, say) => {
    const { measured, limit } = say.compare(to, from);
    return [
      `${startOf(thing)} es ${measured}, menos que ${nameOf({ keys: low, numbers: [] })}.`,
      `Debe ser ${limit} o más.`,
    ];
  },
  tooManyBoxes: ({ boxes, most }, say) => [
    `La basura necesitaría ${say.count(boxes)} cajas.`,
    `Debe haber ${say.count(most)} como máximo.`,
    'Separe más las cajas.',
  ],
  timesBackwards: ({ from, to }, say) => [
    `Alguien de la lista llega a las ${say.clock(from)} y se va a las ${say.clock(to)}.`,
    'La segunda hora debería ser posterior; tras medianoche las horas pasan de 24.',
  ],
  partBackwards: ({ from, to }, say) => [
    `El tramo comienza en ${say.far(from)} y acaba en ${say.far(to)}.`,
    'Debe acabar después de comenzar.',
    'Para un tramo en sentido contrario, añada un recorrido invertido.',
  ],
  heatStepsFall: ({ steps }, say) => [
    `Los umbrales de calor son ${say.found(steps[0])} y ${say.found(steps[1])} °C.`,
    'El menor debe ir primero.',
  ],
  noneOf: ({ choices, ...thing }, say) => [
    `${startOf(thing)} está sin completar.`,
    `Debe tener ${say.any(choices.map((one) => choiceText[one]))}.`,
  ],
  together: ({ found, choices }, say) => [
    `Hay a la vez ${say.all(found.map((one) => choiceText[one]))}.`,
    `Debe haber solo uno: ${say.any(choices.map((one) => choiceText[one]))}.`,
  ],
});

const KINDS = {
  course: ['ningún recorrido', 'Recorridos de este plan', 'El plan aún no tiene recorridos.'],
  race: ['ninguna carrera', 'Carreras de este plan', 'El plan aún no tiene carreras.'],
  station: ['ningún puesto', 'Puestos de este plan', 'El plan aún no tiene puestos.'],
} as const;

export const planReference: TextsOf<PlanParams>['plan-reference'] = byProblem({
  twice: ({ found, number, ...thing }, say) => [
    `${startOf(thing)} es ${say.found(found)}, igual que ${nameOf({ ...thing, numbers: [number] })}.`,
    'Deben ser distintos.',
  ],
  missing: ({ of, name, ...thing }, say) => {
    const [none, known, empty] = KINDS[of];
    return [
      `No hay ${none} ${say.found(name.word)} en este plan.`,
      `Figura como ${nameOf(thing)}.`,
      suggested(name, known, empty, say),
    ];
  },
  notServed: ({ name, ...thing }, say) => [
    `${startOf(thing)} es ${say.found(name.word)}.`,
    'El puesto no atiende esa carrera.',
    suggested(name, 'Carreras atendidas aquí', 'No atiende ninguna.', say),
  ],
  sameNumber: ({ number, stations: [one, other] }, say) => [
    `Dos puestos conservan el número ${number}: ${say.found(one)} y ${say.found(other)}.`,
    'Cada uno debe tener el suyo.',
  ],
  circle: ({ way }, say) => [
    `Los tramos de los recorridos forman un círculo: ${way.map(say.found).join(' → ')}.`,
    'Un tramo debe venir de un recorrido que no lleve de vuelta a este.',
  ],
});
