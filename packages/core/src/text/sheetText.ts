/**
 * Every sentence of the papers, as one typed record: a language is one file that fills it in.
 * Sentences with figures are functions of texts that are already formatted; they return plain text,
 * which the sheets escape. The safety sentences say less than a practitioner would, and defer.
 */
import type { CaptainText } from './captainText.ts';
import type { CardText } from './cardText.ts';
import type { FrameText } from './frameText.ts';
import type { ListsText } from './listsText.ts';
import type { ThingNames } from './planThing.ts';
import type { ReportText } from './reportText.ts';
import type { WeatherText } from './weatherText.ts';
import type { YearText } from './yearText.ts';

/** One language. */
export interface SheetText {
  /** BCP 47 tag: the document's `lang`. */
  readonly language: string;
  /** Its own name for itself. */
  readonly name: string;
  /** What a plan's values are called, by their keys: labels of what a sheet shows as the plan has it. */
  readonly things: ThingNames;
  readonly frame: FrameText;
  readonly captain: CaptainText;
  readonly card: CardText;
  readonly lists: ListsText;
  readonly report: ReportText;
  readonly weather: WeatherText;
  readonly year: YearText;
}
