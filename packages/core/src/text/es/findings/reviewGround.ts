/** Lo que dicen las comprobaciones del terreno, según un mapa. */
import type { GroundParams, OnStretch, StretchOf } from '../../params/reviewGround.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, areMany, begin } from '../nouns.ts';

/** "según el mapa del 2026-10-02". */
const byMap = (map: string | null): string => (map === null ? 'según el mapa' : `según el mapa del ${map}`);

const SURFACES: Readonly<Record<string, string>> = {
  cobblestone: 'adoquines',
  sett: 'adoquines labrados',
  unhewn_cobblestone: 'empedrado',
  pebblestone: 'guijarros',
  gravel: 'grava',
  fine_gravel: 'gravilla',
  grass: 'hierba',
  grass_paver: 'losetas con hierba',
  ground: 'tierra',
  dirt: 'tierra',
  earth: 'tierra',
  mud: 'barro',
  sand: 'arena',
  unpaved: 'firme sin pavimentar',
  compacted: 'tierra compactada',
  wood: 'madera',
  metal: 'metal',
  rock: 'roca',
  woodchips: 'astillas',
};
const surfaceWord = (surface: string): string => SURFACES[surface] ?? surface.replaceAll('_', ' ');

const MOST = 3;
const more = (say: Say) => (count: number) => `${say.count(count)} más`;
const places = (measures: readonly number[], say: Say): string => some(measures.map(say.far), say, more(say), MOST);
const stretchText = ({ from, to }: StretchOf, say: Say): string => `${say.far(from)} a ${say.far(to)}`;

/** "El cartel y las mesas de agua están". */
const stand = (items: OnStretch['items'], say: Say): string =>
  `${begin(say.all(items.map((kind) => STANDING[kind])))} ${areMany(items) ? 'están' : 'está'}`;
const named = (what: string, name: string | null): string => (name === null ? what : `${what} ${name}`);

/** Lo que está allí, cómo debe ser, y que se mueva. */
const on = ({ items, map }: OnStretch, where: string, should: string, say: Say): Sentence => [
  `${stand(items, say)} ${where}, ${byMap(map)}.`,
  should,
  `Mueva el puesto a lo largo del recorrido, o coloque ${areMany(items) ? 'esas cosas' : 'eso'} a mano en otro sitio.`,
];

export const ground: TextsOf<GroundParams> = {
  'ground-missing': ({ file }, say) => [
    `El plan nombra el mapa ${say.quote(file)}, que falta o no se puede leer.`,
    'Sin él no se comprueban calles, cruces, hidrantes ni edificios.',
    'Ponga el archivo junto al plan, o hágalo de nuevo a partir de un mapa de calles.',
  ],
  'ground-silent': ({ map, lacks }) => {
    const words = { buildings: 'edificios', hydrants: 'hidrantes' } as const;
    return [
      `El mapa${map === null ? '' : ` del ${map}`} no muestra ${lacks.map((one) => words[one]).join(' ni ')} junto a los recorridos; eso no significa que no los haya.`,
      `No se ha podido juzgar ${lacks.includes('buildings') ? 'si un edificio tapa un cartel' : 'si quedan libres los hidrantes'}${lacks.length > 1 ? ' ni si quedan libres los hidrantes' : ''}.`,
      'Compruébelo sobre el terreno.',
    ];
  },
  'map-old': ({ map, age, most }, say) =>
    map === null || age === null
      ? [
          'El mapa no dice de qué día es.',
          null,
          'Hágalo de nuevo a partir de un extracto reciente, y compruebe las calles sobre el terreno.',
        ]
      : [
          `El mapa es del ${map}, ${say.count(Math.floor(age))} años antes de la carrera.`,
          `Debe tener como mucho ${say.count(most)} años: las calles cambian.`,
          'Hágalo de nuevo a partir de un extracto reciente.',
        ],
  'off-map': ({ course, stretches, share, most, map }, say) =>
    most
      ? [
          `El ${say.percent(share)} de ${say.course(course)} no sigue ninguna calle, ${byMap(map)}.`,
          'El mapa parece ser de otro lugar, o terminar demasiado pronto.',
          'Hágalo de nuevo a partir de un extracto que contenga todo el recorrido.',
        ]
      : [
          `${say.course(course)} no sigue ninguna calle, ${byMap(map)}, en ${some(
            stretches.map((one) => stretchText(one, say)),
            say,
            more(say),
            MOST,
          )}.`,
          'Allí falta un camino en el mapa, o la línea se aparta de su calle.',
          'Revise allí la línea; por el mapa no se juzga nada en ese tramo.',
        ],
  'item-in-mouth': (params, say) =>
    on(
      params,
      `en la boca de ${params.name ?? 'una calle lateral'}`,
      'Debe quedar libre: por ella salen ambulancias y vecinos, y allí está quien cierra la calle.',
      say,
    ),
  'item-on-bridge': (params, say) =>
    on(
      params,
      `en ${named('un puente', params.name)}`,
      'Los puentes son estrechos, con viento y sin salida a los lados.',
      say,
    ),
  'item-in-tunnel': (params, say) =>
    on(
      params,
      `en ${named('un túnel', params.name)}`,
      'Está oscuro, las radios fallan y no hay salida a los lados.',
      say,
    ),
  'item-on-steps': (params, say) =>
    on(params, 'en unas escaleras', 'En unas escaleras nadie puede beber ni llevar mesas.', say),
  'item-on-level-crossing': (params, say) =>
    on(
      params,
      'en un paso a nivel o junto a él',
      `No debe haber nada a menos de ${say.length(params.room)} de los raíles; decide el ferrocarril.`,
      say,
    ),
  'item-at-stop': (params, say) =>
    on(
      params,
      `en ${named(params.stop === 'bus' ? 'la parada de autobús' : 'la parada de tranvía', params.name)}`,
      'Allí esperan y bajan pasajeros, salvo que se cierre por la carrera.',
      say,
    ),
  'item-on-crossing': (params, say) =>
    on(
      params,
      'en un paso de peatones',
      'Por él cruza la gente, y los bordillos están rebajados para sillas de ruedas.',
      say,
    ),
  'hydrant-blocked': ({ items, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} a ${away} por el bordillo de un hidrante, ${byMap(map)}.`,
      `Deben quedar libres al menos ${least} a su lado; deciden los bomberos.`,
      'Mueva el puesto a lo largo del recorrido, o pregunte a los bomberos.',
    ];
  },
  'fire-station-blocked': ({ items, name, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} a ${away} por la vía de ${name ?? 'un parque de bomberos'}, ${byMap(map)}.`,
      `Deben quedar libres al menos ${least} de vía a ambos lados, para que salgan los camiones; deciden los bomberos.`,
      'Mueva el puesto, o acuérdelo con los bomberos.',
    ];
  },
  'hospital-blocked': ({ items, name, of, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} a ${away} por la vía de ${name ?? (of === 'hospital' ? 'un hospital' : 'una base de ambulancias')}, ${byMap(map)}.`,
      `Deben quedar libres al menos ${least} de vía, pues van y vienen ambulancias.`,
      `Mueva el puesto, o acuérdelo con ${of === 'hospital' ? 'el hospital' : 'la base de ambulancias'}.`,
    ];
  },
  'gate-on-course': ({ measures, map }, say) => [
    `Hay ${measures.length === 1 ? 'una barrera o un bolardo' : 'barreras o bolardos'} en el recorrido en ${places(measures, say)}, ${byMap(map)}.`,
    'Debe estar abierto, quitado, o señalado y acolchado antes del primer corredor.',
    'Averigüe quién tiene la llave, y póngalo en la lista de la mañana de la carrera.',
  ],
  'steps-with-wheels': ({ races, measures, map }, say) => [
    `${say.all(races.map(say.race))}, sobre ruedas, ${races.length === 1 ? 'llega' : 'llegan'} a unas escaleras en ${places(measures, say)}, ${byMap(map)}.`,
    'Un recorrido para ruedas no debe tener ninguna.',
    'Lleve las ruedas por otro camino, o corrija la línea.',
  ],
  'rough-surface': ({ course, races, stretches, map }, say) => {
    const list = some(
      stretches.map((one) => `${surfaceWord(one.surface)} en ${stretchText(one, say)}`),
      say,
      more(say),
      MOST,
    );
    return races.length > 0
      ? [
          `${say.all(races.map(say.race))}, sobre ruedas, ${races.length === 1 ? 'encuentra' : 'encuentran'} ${list}, ${byMap(map)}.`,
          'Las ruedas deben encontrar un firme duro y liso.',
          'Véalo con alguien que compita sobre ruedas, y lleve las ruedas por otro camino si así lo dice.',
        ]
      : [
          `${say.course(course)} tiene ${list}, ${byMap(map)}.`,
          null,
          'Mire dónde se puede tropezar con el suelo mojado.',
        ];
  },
  'width-from-map': ({ stations, map }, say) => [
    `Sin ancho de vía en el plan, pero ${byMap(map)}: ${some(
      stations.map(({ station, width }) => `${say.station(station)} unos ${say.length(width)}`),
      say,
      more(say),
      MOST,
    )}.`,
    'Es solo aproximado.',
    'Mida las vías, e introduzca sus anchos.',
  ],
  'narrow-by-map': ({ measured, limit, road, map }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      `La vía tiene unos ${say.length(road)} de ancho, ${byMap(map)}: junto a las mesas y el equipo que reparte quedarían libres unos ${clear}.`,
      `Deben quedar libres al menos ${least}.`,
      'Mida la vía e introduzca su ancho, o lleve el puesto a una más ancha.',
    ];
  },
  'sign-unseen': ({ within, map }, say) => [
    `Un edificio tapa el cartel desde ${say.length(within)} antes, ${byMap(map)}.`,
    `Los corredores deben verlo desde ${say.length(within)}.`,
    'Mueva el cartel o el puesto, y mírelo sobre el terreno: el mapa tiene solo contornos.',
  ],
  'tables-unseen': ({ distance, map }, say) => [
    `Un edificio tapa las mesas desde el cartel, ${say.length(distance)} antes de ellas, ${byMap(map)}.`,
    null,
    'Diga en el cartel lo que hay tras la esquina, o mueva el puesto.',
  ],
};
