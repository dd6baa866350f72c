/** Lo que falta a los recorridos de un plan en los archivos que nombra. */
import { byProblem } from '../../byProblem.ts';
import type { SourceParams } from '../../params/plan.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { suggested } from '../planValues.ts';

const markText = (name: string | undefined, say: Say): string =>
  name === undefined ? 'Una marca' : `La marca ${say.found(name)}`;

export const planSources: TextsOf<SourceParams> = {
  'text-encoding': byProblem({
    wide: ({ encoding }) => [
      `Este archivo está en ${encoding}.`,
      'Debe ser texto en UTF-8.',
      'Guárdelo otra vez como UTF-8.',
    ],
    invalid: ({ byte, at }, say) => [
      `El byte ${say.count(at)} de este archivo (hex ${byte}) no es UTF-8 válido.`,
      null,
      'Guarde el archivo otra vez como UTF-8, para que no se pierda ninguna letra.',
    ],
    binary: ({ byte, at }, say) => [
      `Este archivo contiene datos binarios, no texto: el byte ${say.count(at)} es hex ${byte}.`,
      'Debe ser texto en UTF-8.',
      'Elija otro archivo.',
    ],
  }),
  'gpx-missing': ({ gpx }, say) => [
    `El archivo ${say.found(gpx)} no está junto al plan.`,
    null,
    'Póngalo allí, o corrija su nombre en el plan.',
  ],
  'mark-unknown': byProblem({
    unmeasured: ({ name, waypoint }, say) => [
      `${markText(name, say)} no dice ninguna distancia del recorrido.`,
      `Debe tenerla, o un nombre como ${say.quote('10 km')} o ${say.quote('mile 6')}.`,
      waypoint === undefined ? null : suggested(waypoint, 'Puntos del archivo', 'No hay puntos en el archivo.', say),
    ],
    unplaced: ({ name, gpx, waypoint }, say) => [
      `${markText(name, say)} no tiene lugar: ${
        gpx === undefined
          ? 'el recorrido no tiene un archivo GPX propio'
          : `${say.found(gpx.file)} ${gpx.waypoints === 0 ? 'no tiene ningún punto' : `tiene ${say.count(gpx.waypoints)} puntos`} con ese nombre`
      }.`,
      'Debe ser el nombre de un único punto, o tener un lugar.',
      waypoint === undefined ? null : suggested(waypoint, 'Puntos del archivo', 'No hay puntos en el archivo.', say),
    ],
  }),
};
