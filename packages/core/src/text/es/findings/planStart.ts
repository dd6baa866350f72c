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

const RACE_FIELDS = {
  turnAt: ['un punto de giro', 'una distancia del recorrido mayor que 0, como 2.5'],
  laps: ['un número de vueltas', 'un número entero de 1 a 99'],
  start: ['una hora de salida', 'una hora como 08:00'],
  entrants: ['un número de corredores', 'un número entero de 1 o más'],
  finish: ['un tiempo de llegada', 'horas y minutos como 2:10, o un tiempo como 0:28:30 o 130 min'],
  cutoff: ['un tiempo límite', 'horas y minutos como 3:30, o un tiempo como 210 min'],
  cutoffAt: ['una hora', 'una hora como 11:30'],
} as const;

/** Un tiempo con un solo signo de dos puntos, leído como minutos y segundos. */
const asMinutes = (found: unknown): string | null => {
  const match = typeof found === 'string' ? /^(\d{1,2}):([0-5]\d)$/u.exec(found) : null;
  return match === null || Number(match[1]) > 59 ? null : `0:${match[1]!.padStart(2, '0')}:${match[2]!}`;
};

export const setUpTexts: Pick<TextsOf<PlanParams>, 'setup-race' | 'setup-file' | 'setup-every'> = {
  'setup-race': byProblem({
    value: ({ field, found }, say) => [
      `${say.found(found)} no es ${RACE_FIELDS[field][0]}.`,
      `Debe ser ${RACE_FIELDS[field][1]}.`,
    ],
    twoShapes: () => ['La carrera tiene un punto de giro y vueltas.', 'Debe tener uno de los dos.'],
    turnPast: ({ measure, length }, say) => [
      `La carrera gira en ${say.far(measure)}, pero su recorrido mide ${say.far(length)}.`,
      'Debe girar antes del final del recorrido.',
    ],
    noName: () => ['La carrera no tiene nombre.', null, 'Póngale uno.'],
    noEntrants: () => [
      'La carrera tiene hora de salida pero no corredores.',
      null,
      'Diga cuántos corredores están inscritos.',
    ],
    noStart: ({ of }) => [
      of === 'entrants'
        ? 'La carrera tiene corredores pero no hora de salida.'
        : 'Un tiempo límite se cuenta desde la hora de salida.',
      null,
      'Diga la hora de salida.',
    ],
    twoCutoffs: () => ['La carrera tiene un tiempo límite y una hora de cierre.', 'Debe tener uno de los dos.'],
    cutoffFirst: ({ start, cutoff }, say) => [
      `El cierre a las ${say.clock(cutoff)} no es posterior a la salida de las ${say.clock(start)}.`,
      'Debe ser más tarde. Las horas después de medianoche pasan de 24:00.',
    ],
    pace: ({ found, time, length }, say) => {
      const minutes = asMinutes(found);
      return [
        `${say.found(found)} son ${say.duration(time)} para ${say.far(length)}, un tiempo que nadie hace.`,
        'Con un solo signo de dos puntos son horas y minutos.',
        minutes === null ? 'Compruebe el tiempo y el recorrido.' : `Escriba minutos y segundos así: ${minutes}.`,
      ];
    },
  }),
  'setup-file': byProblem({
    course: ({ gpx }, say) => [`No se dio el archivo del recorrido ${say.found(gpx)}.`, null, 'Añada ese archivo.'],
    race: ({ gpx }, say) => [
      `Una carrera va por el recorrido de ${say.found(gpx)}, que no es ninguno de los recorridos.`,
      null,
      'Elija uno de los archivos dados.',
    ],
  }),
  'setup-every': ({ every, most }, say) => [
    `Un puesto cada ${every < 1000 ? say.length(every) : say.far(every)} no da ninguno en estos recorridos, o más de ${say.count(most)}.`,
    'La separación debe ser mayor que 0 y menor que un recorrido.',
  ],
};
