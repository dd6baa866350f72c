/** English sentences of findings on what a station's day asks for: people, tables, time for pouring, drinks. */
import type { RacedayParams } from '../../params/raceday.ts';
import type { TextsOf } from '../../sentence.ts';
import { minutesText } from '../../spans.ts';
import { humanised, thingName } from '../../planThing.ts';
import { planThings } from '../planThings.ts';

const named = (keys: string): string => thingName({ keys, numbers: [] }, planThings, humanised(keys));

export const crew: Pick<
  TextsOf<RacedayParams>,
  'tables-room' | 'crew-many' | 'pour-late' | 'drinks-few' | 'rule-unused'
> = {
  'tables-room': ({ wanted, tables, length, room, pourers, stations }, say) => [
    `${say.count(wanted)} drink tables would be ${say.length(length)} long${stations === undefined ? '' : ` at ${say.station(stations[0]!)}; ${stations.length === 2 ? 'one more station is' : `${say.count(stations.length - 1)} more stations are`} like it`}.`,
    tables < wanted
      ? `There is room for ${say.length(room)}, so ${say.count(tables)} ${tables === 1 ? 'table is' : 'tables are'} planned${
          pourers === null ? '' : `, kept full by ${say.count(pourers)} ${pourers === 1 ? 'pourer' : 'pourers'}`
        }.`
      : `There is room for ${say.length(room)}.`,
    'Plan a second row of tables, or ask the road authority for tables on both sides.',
  ],
  'crew-many': ({ crew: people, arrivals, most }, say) => [
    `A crew of ${say.count(people)} for ${say.count(arrivals)} arrivals is a lot.`,
    `${say.count(most)} would be usual at most.`,
    'Check the crew rules, and how many runners are expected.',
  ],
  'pour-late': ({ cups, people, takes, most }, say) => [
    `${say.count(people)} ${people === 1 ? 'person takes' : 'people take'} ${minutesText(takes)} to pour ${say.count(cups)} cups before the first runner.`,
    `It should take at most ${minutesText(most)}.`,
    'Add people, or pour fewer cups ahead.',
  ],
  'drinks-few': ({ stations, ordered, least, apart }, say) => [
    `${stations.length === 1 ? say.station(stations[0]!) : say.all(stations.map((id) => say.station(id)))} ${
      stations.length === 1 ? 'has' : 'have'
    } as few as ${say.found(Number(ordered.toFixed(1)))} drinks a runner.`,
    `A station guide asks for at least ${say.count(least)} where stations are ${say.far(apart)} apart.`,
    'Order more, or check the rates.',
  ],
  'rule-unused': ({ rules, because }, say) => [
    `${because === 'bottles' ? 'Bottles are filled here' : "Boxes are counted by the day's cups"}, so ${rules.length === 1 ? 'a rule has' : 'some rules have'} no effect: ${say.all(rules.map(named))}.`,
    null,
    because === 'bottles'
      ? 'Remove the rule, or hand out cups.'
      : 'Remove the rule, or give stations a number of boxes.',
  ],
};
