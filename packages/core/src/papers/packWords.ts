/** Words for what is sent to a station, from the names that race day gives it. */
import type { PackWord } from '../text/captainText.ts';
import type { SheetText } from '../text/sheetText.ts';

const SIGN = 'sign: ';
const EMPTY = ' (empty)';

/** "Sign “Water ahead”", "jugs of water", "jugs of water, empty"; a name that no language knows stands as it is. */
export function packText(item: string, text: SheetText): string {
  const {
    lists: { supplies },
    captain,
  } = text;
  if (item.startsWith(SIGN)) return supplies.signOf(item.slice(SIGN.length));
  if (item === 'trash bags') return supplies.trashBags;
  if (item.endsWith(EMPTY)) return supplies.empty(packText(item.slice(0, -EMPTY.length), text));
  return capital(Object.hasOwn(captain.supplies.packs, item) ? captain.supplies.packs[item as PackWord] : item);
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
