/** What a paper speaks with: its language's sentences, and the plan's units and names. */
import type { SheetText } from '../text/sheetText.ts';
import type { Voice } from '../text/voice.ts';

export interface Spoken {
  readonly text: SheetText;
  readonly voice: Voice;
}
