/** From which zooms what is drawn. */
import { BANDS } from '../layers/words.ts';

/** Items one by one. */
export const ITEMS_ZOOM = 15.2;
/** The words of the items have room, so that rings stand farther out. */
export const WORDS_ZOOM: number = BANDS[0]!;
/** The names of stations have room, as on the whole island on a wide screen; numbers are drawn from any. */
export const NAMES_ZOOM = 10.8;
