/** De qué no se pudo hacer el primer plan de un recorrido, y de qué se hizo. */
import { byProblem } from '../../byProblem.ts';
import type { PlanParams } from '../../params/plan.ts';
import type { TextsOf } from '../../sentence.ts';
import { listed } from '../planValues.ts';

const SAY_WHERE = 'Diga cada cuánto, o a qué distancias del recorrido, debe haber puestos.';
const ENDS = { start: 'en la salida', finish: 'en la meta' } as const;

export const startPlaces: TextsOf<PlanParams>['start-places'] = byProblem({
  everyAndAt: () => [
    'Se dieron a la vez una separación y distancias del recorrido.',
    null,
    'Dé una de las dos, o ninguna para usar los puntos del archivo.',
  ],
  noWaypoints: () => ['El archivo no tiene puntos de los que hacer puestos.', null, SAY_WHERE],
  noStations: () => ['Ningún punto del archivo se convirtió en puesto.', null, SAY_WHERE],
  every: ({ every, length, most }, say) => [
    typeof every === 'number'
      ? `Se pidió un puesto cada ${every < 1000 ? say.length(every) : say.far(every)} en un recorrido de ${say.far(length)}.`
      : `La separación es ${say.found(every)}; el recorrido mide ${say.far(length)}.`,
    `La separación debe ser menor que el recorrido, y dar ${say.count(most)} puestos como máximo.`,
  ],
  repeated: ({ measure }, say) => [`El lugar en ${say.far(measure)} se dio más de una vez.`, 'Se hizo un solo puesto.'],
  unusedMarks: ({ names, more }, say) => [
    `Hay puntos del archivo que dicen distancias y no se usaron: ${listed(names, more, say)}.`,
    null,
    'Dé como marcas los que sean marcas medidas del recorrido.',
  ],
});

export const startWaypoint: TextsOf<PlanParams>['start-waypoint'] = byProblem({
  mark: ({ name }, say) => [
    `El punto ${say.found(name)} se convirtió en marca del recorrido, no en puesto.`,
    null,
    'Si es un puesto, páselo de las marcas del recorrido a los puestos.',
  ],
  end: ({ name, end }, say) => [`El punto ${say.found(name)} se omitió: está ${ENDS[end]}, que no necesita puesto.`],
  offCourse: ({ name }, say) => [
    `El punto ${say.found(name)} dice una distancia, pero el recorrido no pasa por él.`,
    'Se hizo puesto, no marca.',
    'Corríjalo, o invierta el recorrido, y empiece de nuevo.',
  ],
  unordered: ({ name }, say) => [
    `El punto ${say.found(name)} dice una distancia, pero esas distancias no crecen a lo largo del recorrido.`,
    'Se hizo puesto, no marca.',
    'Corríjalas, o invierta el recorrido, y empiece de nuevo.',
  ],
});
