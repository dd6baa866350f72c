/** Waypoints y calendarios. */
import type { ExportsParams } from '../../params/exports.ts';
import type { TextsOf } from '../../sentence.ts';

const ENDS = { whole: '', first: ' (primer extremo)', last: ' (último extremo)' } as const;

export const exports: TextsOf<ExportsParams> = {
  'export-unplaced': ({ items }, say) => [
    `Sin lugar en el terreno: ${say.all(items.map(({ item, end }) => `${say.itemInside(item)}${ENDS[end]}`))}.`,
    'El archivo GPX deja fuera lo que no tiene lugar; el montaje dice por qué.',
  ],
  'calendar-no-clock': ({ missing }) =>
    missing === 'date'
      ? [
          'El plan no tiene fecha.',
          'Un calendario la necesita para decir cuándo llegan los equipos.',
          'Añada la fecha, como 2027-09-12.',
        ]
      : [
          'El plan no tiene zona horaria.',
          'Un calendario la necesita para decir cuándo llegan los equipos.',
          'Añada su nombre en la base de datos de zonas horarias de IANA, como Atlantic/Azores.',
        ],
  'calendar-no-times': ({ problem }) =>
    problem === 'noWaves'
      ? [
          'Ninguna carrera del plan tiene oleadas.',
          'Los horarios de los equipos salen del paso de los corredores.',
          'Añada oleadas y tiempos de llegada a una carrera.',
        ]
      : [
          'Nadie llega a ningún puesto.',
          'Un calendario contiene los horarios de los equipos de los puestos.',
          'Haga que un puesto atienda una carrera, o corrija las oleadas.',
        ],
  'calendar-left-out': () => [
    'Nadie llega aquí, así que el equipo no tiene horario.',
    'El calendario omite el puesto.',
  ],
  'calendar-clock-change': ({ date, time, problem }, say) =>
    problem === 'skipped'
      ? [
          `La hora ${say.clock(time)} del ${date} no existe: los relojes se adelantan.`,
          'Se toma como antes del cambio.',
          'Diga al equipo qué hora vale.',
        ]
      : [
          `La hora ${say.clock(time)} del ${date} ocurre dos veces: los relojes se atrasan.`,
          'Se toma la primera.',
          'Diga al equipo qué hora vale.',
        ],
};
