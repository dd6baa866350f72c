import type { FrameText } from '../frameText.ts';
import { supplyWords } from './supplyWords.ts';
import { words } from './words.ts';

export const frame: FrameText = {
  version: (version) => `Versión ${version}`,
  noVersion: 'Versión sin indicar',
  printed: (at) => `Impreso ${at}`,
  destroy: 'Destruya las copias anteriores',
  page: 'Página',
  of: 'de',
  noName: 'Un plan sin nombre',
  toFill: 'por rellenar:',
  caution:
    'Ayuda para planificar: deciden las normas locales, la autoridad de la vía, la policía y los profesionales habilitados.',
  station: 'Puesto',
  items: words.items,
  served: words.served,
  points: words.points,
  supplies: supplyWords,
  left: words.left,
  right: words.right,
  side: 'Lado',
  sideUnclear: 'lado sin determinar: pregunte antes de montar',
  count: words.count,
};
