/** Poured cups in English. */
import type { PourWords } from '../pourWords.ts';

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const word = (count: number): string => WORDS[count] ?? String(count);

function layersText(full: number, rest: number): string {
  const layers = `${word(full)} full ${full === 1 ? 'layer' : 'layers'}`;
  if (full === 0) return 'one layer, not full';
  return rest === 0 ? layers : `${layers} and ${rest} on top`;
}

/** "Pour 470: two tables, about 235 on each, one full layer and 35 on top". */
export function pourText({ cups, tables, each, full, rest }: PourWords): string {
  if (cups === '0' || tables === 0) return 'Pour nothing ahead';
  const on = tables === 1 ? 'one table' : `${word(tables)} tables, about ${each} on each`;
  return `Pour ${cups}: ${on}, ${layersText(full, rest)}`;
}
