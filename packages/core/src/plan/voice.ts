/** How the findings on a plan are spoken: in its units, with its names of stations, races and courses. */
import type { Names, Voice } from '../text/voice.ts';
import type { UnitSystem } from '../units.ts';
import type { Plan } from './plan.ts';
import { isVoiceOptions } from '../text/voice.ts';
import { want } from '../wants.ts';
import { isPlanNames } from './shapes.ts';

const table = (entries: readonly { readonly id: string; readonly name: string }[]): ((id: string) => string) => {
  const names = new Map(entries.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
};

/** The plan's names by id. */
export const namesOf = ({ stations, races, courses }: Pick<Plan, 'stations' | 'races' | 'courses'>): Names => ({
  station: table(stations),
  race: table(races),
  course: table(courses),
});

/**
 * The plan's voice: English in its own units, unless others are asked for. `language`: a BCP 47 tag.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { voiceOf } from '@halfcup/core/sentences';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1, "units": "imperial",
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "name": "Ten", "course": "c" }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { units, language, names } = voiceOf(read.value.plan);
 * [units, language, names.race('r')]; // → ['imperial', 'en', 'Ten']
 * ```
 */
export function voiceOf(
  plan: Pick<Plan, 'stations' | 'races' | 'courses' | 'units'>,
  options: { readonly units?: UnitSystem; readonly language?: string } = {},
): Voice {
  want('voiceOf', 'plan', isPlanNames, plan);
  want('voiceOf', 'options', isVoiceOptions, options);
  const { units = plan.units, language = 'en' } = options;
  return { units, language, names: namesOf(plan) };
}
