/** Los vasos servidos, en español. */
import type { PourWords } from '../pourWords.ts';

const WORDS = [
  'ninguna',
  'una',
  'dos',
  'tres',
  'cuatro',
  'cinco',
  'seis',
  'siete',
  'ocho',
  'nueve',
  'diez',
  'once',
  'doce',
];
const word = (count: number): string => WORDS[count] ?? String(count);

function layersText(full: number, rest: number): string {
  const layers = full === 1 ? 'una capa completa' : `${word(full)} capas completas`;
  if (full === 0) return 'una capa, sin llenarla';
  return rest === 0 ? layers : `${layers} y ${rest} encima`;
}

/** "Sirva 470: dos mesas, unos 235 en cada una, una capa completa y 35 encima". */
export function pourText({ cups, tables, each, full, rest }: PourWords): string {
  if (cups === '0' || tables === 0) return 'No sirva nada de antemano';
  const on = tables === 1 ? 'una mesa' : `${word(tables)} mesas, unos ${each} en cada una`;
  return `Sirva ${cups}: ${on}, ${layersText(full, rest)}`;
}
