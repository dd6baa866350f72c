/** What the checks say of ways that runners take. */
import type { PassAt } from '../../params/review.ts';
import type { FlowParams, StretchPart } from '../../params/reviewFlows.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { passAt } from '../nouns.ts';

/** So many passes are told one by one; the plan shows all. */
const MOST_PASSES = 2;

const PARTS: { readonly [part in StretchPart]: readonly [past: string, missed: string] } = {
  sign: ['el cartel', 'al cartel'],
  tables: ['las mesas', 'a las mesas'],
  boxes: ['las cajas', 'a las cajas'],
};

const byTables = (away: number, say: Say): string =>
  away === 0 ? 'junto a las mesas' : `${say.length(Math.abs(away))} ${away < 0 ? 'antes' : 'después'} de las mesas`;

function some(all: readonly PassAt[], say: Say): string {
  const told = all.slice(0, MOST_PASSES).map((pass) => passAt(pass, say));
  const left = all.length - told.length;
  return left === 0 ? say.all(told) : `${told.join(', ')} y ${left === 1 ? 'otro' : `otros ${say.count(left)}`}`;
}

export const flows: TextsOf<FlowParams> = {
  'flows-share-width': ({ other, measured, road, limit, each }, say) => {
    if (measured === null || road === null)
      return [
        `Pasan corredores en los dos sentidos (el otro: ${some(other, say)}); no se indica el ancho de la vía.`,
        `Cada sentido debe tener ${say.length(each)} junto a las mesas: no se puede juzgar.`,
        'Indique el ancho de la vía.',
      ];
    const { measured: clear, limit: least } = say.compare(measured, limit);
    return [
      `Junto a las mesas quedan solo ${clear} de los ${say.length(road)} de vía para los dos sentidos (el otro: ${some(other, say)}).`,
      `Deben ser al menos ${least}, ${say.length(each)} para cada uno.`,
      'Busque una vía más ancha, o acuerde con la autoridad de la vía cómo separar los dos sentidos.',
    ];
  },
  'fork-in-stretch': ({ races, how, away, meets, misses }, say) => {
    const many = races.length > 1;
    const verb = how === 'joins' ? (many ? 'se incorporan a' : 'se incorpora a') : many ? 'dejan' : 'deja';
    const passed = say.all(meets.map((part) => PARTS[part][0]));
    const missed = say.all(misses.map((part) => PARTS[part][1]));
    return [
      `${say.all(races.map(say.race))} ${verb} esta vía ${byTables(away, say)}: sus corredores ${meets.length === 0 ? '' : `pasan por ${passed}, pero `}no llegan ${missed}.`,
      'Donde los recorridos se unen o se separan, se debe pasar por todo el puesto o por nada de él.',
      'Mueva el puesto para que quede entero a un lado de la bifurcación.',
    ];
  },
  'leg-crosses': ({ courses, measure, touches, away }, say) => {
    const one = courses.length === 1;
    const verb = touches ? (one ? 'sale a' : 'salen a') : one ? 'cruza' : 'cruzan';
    return [
      `${say.all(courses.map(say.course))} ${verb} esta vía ${byTables(away, say)} (en ${say.far(measure)}).`,
      'Entre el cartel y la última caja ningún otro tramo debe cruzarla ni tocarla.',
      'Mueva el puesto adonde no crucen otros corredores.',
    ];
  },
  'passers-not-served': ({ passes }, say) => [
    `${some(passes, say)} ${passes.length > 1 ? 'pasan' : 'pasa'} junto a las mesas sin que se le${passes.length > 1 ? 's' : ''} sirva.`,
    'Quien pasa junto a las mesas pide vasos, y los suyos no están contados.',
    'Sírvales también, o aparte las mesas de su camino.',
  ],
  'stations-face': ({ other, measured, road, limit }, say) => {
    if (measured === null || road === null)
      return [
        `Las mesas quedan enfrente de las de ${say.station(other)}, y no se indica el ancho de la vía.`,
        `Entre unas y otras deben quedar libres al menos ${say.length(limit)}: no se puede juzgar.`,
        'Indique el ancho de la vía, o mueva uno de los dos puestos a lo largo de ella.',
      ];
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      `Las mesas quedan enfrente de las de ${say.station(other)}: entre unas y otras quedan libres ${clear} de los ${say.length(road)} de vía.`,
      `Deben ser al menos ${least}.`,
      'Mueva uno de los dos puestos a lo largo de la vía.',
    ];
  },
};
