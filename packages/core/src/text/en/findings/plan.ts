import { byProblem } from '../../byProblem.ts';
import type { JsonExpected, PlanParams } from '../../params/plan.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { isStated, suggested } from '../planValues.ts';
import { list } from './list.ts';
import { planReference, planValue } from './planFaults.ts';
import { planSources } from './planSources.ts';
import { setUpTexts, startPlaces, startWaypoint } from './planStart.ts';

type JsonText = readonly [should: (say: Say) => string, action?: string];

const EXPECTED: Readonly<Record<JsonExpected, JsonText>> = {
  value: [() => 'There should be a value: text in double quotes, a number, true, false, a list or an object.'],
  number: [() => 'There should be a number such as 12 or 0.5.'],
  key: [() => 'There should be a key in double quotes.'],
  colon: [() => 'There should be a colon after the key.'],
  comma: [() => 'There should be a comma between entries.'],
  brace: [({ quote }) => `There should be a closing ${quote('}')}.`],
  bracket: [({ quote }) => `There should be a closing ${quote(']')}.`],
  end: [() => 'There should be nothing after the end of the plan.', 'Delete it.'],
  noComment: [() => 'A plan has no comments.', 'Delete it, or write it in a station’s note.'],
  quote: [() => 'Text should end with a double quote on the same line.'],
  digits: [() => 'There should be digits after it.'],
  unicode: [() => 'There should be \\u with four hexadecimal digits.'],
  escape: [() => 'After a backslash there should be one of " \\ / b f n r t u.'],
  noControl: [() => 'Text should have no control characters.', 'Write it as an escape such as \\n or \\t.'],
  noComma: [() => 'There should be no comma after the last entry.', 'Delete the comma.'],
};

const upTo = (current: number): string => (current === 1 ? '1' : `1 to ${current}`);

export const plan: TextsOf<PlanParams> = {
  ...planSources,
  ...list,
  'plan-value': planValue,
  'plan-key': byProblem({
    fixedId: () => ['A variant cannot change the id of a station.', null, 'Delete the id.'],
    unknown: ({ key }, say) => [
      `Unknown entry ${say.found(key.word)}.`,
      null,
      suggested(key, 'Known here', 'There are no entries here.', say),
    ],
  }),
  'plan-reference': planReference,
  'plan-version': byProblem({
    noPlan: ({ found, version }, say) => [
      `The file holds ${say.found(found)}, not a plan.`,
      `A plan is an object in braces with the format ${say.quote('halfcup-plan')} and version ${version}.`,
    ],
    format: ({ found }, say) => [
      isStated(found) ? `The format of the plan is ${say.found(found)}.` : 'The format of the plan is missing.',
      `It should be ${say.quote('halfcup-plan')}.`,
    ],
    version: ({ found, current }, say) => [
      isStated(found)
        ? `The version of the plan format is ${say.found(found)}.`
        : 'The version of the plan format is missing.',
      `It should be a whole number, ${upTo(current)}.`,
    ],
    later: ({ found, current }, say) => [
      `The version of the plan format is ${say.found(found)}, newer than this program knows.`,
      `It should be ${upTo(current)}.`,
      'Update Halfcup to read this plan.',
    ],
  }),
  'plan-not-json': byProblem({
    empty: () => ['The file is empty.', 'It should be a plan.'],
    markup: () => ['This is a GPX or HTML file, not a plan, which is JSON.', null, 'Choose the plan, not the course.'],
    deep: ({ most }, say) => [`Brackets are nested more than ${say.count(most)} deep.`, 'No plan needs that many.'],
    half: ({ found }, say) => [`${say.quote(found)} is half of a character.`, null, 'Write the whole character.'],
    cutOff: ({ expected }, say) => ['The file ends too early.', EXPECTED[expected][0](say), 'It may be cut off.'],
    found: ({ found, expected }, say) => {
      const [should, action] = EXPECTED[expected];
      return [`${say.found(found)} does not belong here.`, should(say), action ?? null];
    },
  }),
  'plan-duplicate-key': byProblem({
    twice: ({ key }, say) => [
      `The entry ${say.found(key)} appears here a second time.`,
      null,
      'Delete one of the two.',
    ],
    hidden: ({ key }, say) => [`A plan has no entry ${say.found(key)}.`, null, 'Delete it.'],
  }),
  'plan-variant': ({ variant }, say) => [
    `There is no variant ${say.found(variant.word)}.`,
    null,
    suggested(variant, 'Variants of this plan', 'This plan has no variants.', say),
  ],
  'start-places': startPlaces,
  'start-waypoint': startWaypoint,
  ...setUpTexts,
};
