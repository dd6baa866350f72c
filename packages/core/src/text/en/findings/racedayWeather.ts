/** What the weather that is expected asks for. */
import type { RacedayParams } from '../../params/raceday.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { temperatureText, windText } from '../../weatherText.ts';
import { weather as words } from '../weather.ts';

const DO = {
  white: 'Have dry clothes and blankets at the stations and the finish.',
  green: 'Nothing beyond the plan is asked for.',
  yellow: 'Have shade and sponges ready, and a second order of drinks.',
  red: 'Order ice, sponges and shade and a second delivery of drinks, and tell runners before the start to slow down.',
  black: 'Agree with the medical director now who stops the race, and how stations and runners hear of it.',
} as const;

export const weather: Pick<TextsOf<RacedayParams>, 'weather-level' | 'weather-wind'> = {
  'weather-level': ({ level, at, celsius, by }, say) => [
    `${wordOf(words.measured, by)} ${temperatureText(celsius, say.units)} is expected at ${say.clock(at)}, level ${wordOf(words.levels, level)} for road races.`,
    'The medical director decides what follows, up to stopping the race.',
    wordOf(DO, level),
  ],
  'weather-wind': ({ at, kmh }, say) => [
    `A wind of ${windText(kmh, say.units)} is expected at ${say.clock(at)}.`,
    'Poured cups should stand in one layer, with weights on them.',
    'Bring weights for cups and sheets, and ties for signs.',
  ],
};
