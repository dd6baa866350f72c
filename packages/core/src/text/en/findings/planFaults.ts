/** Values of a plan that cannot be used, and references that lead nowhere. */
import { byProblem } from '../../byProblem.ts';
import type { PlanParams } from '../../params/plan.ts';
import type { TextsOf } from '../../sentence.ts';
import { acceptedHint, acceptedText, choiceText, isStated, nameOf, suggested } from '../planValues.ts';

export const planValue: TextsOf<PlanParams>['plan-value'] = byProblem({
  value: ({ found, accepted, ...thing }, say) => [
    isStated(found) ? `The ${nameOf(thing)} is ${say.found(found)}.` : `The ${nameOf(thing)} is missing.`,
    `It should ${accepted.kind === 'fewest' || accepted.kind === 'most' ? 'have' : 'be'} ${acceptedText(accepted, found, say)}.`,
    acceptedHint(accepted, say),
  ],
  noSuchDay: ({ found, ...thing }, say) => [
    `The ${nameOf(thing)} is ${say.found(found)}, which is not a day of the calendar.`,
  ],
  latitude: ({ found, swapped, ...thing }, say) => [
    `The ${nameOf(thing)} has the latitude ${say.found(found)}.`,
    'It should be from -90 to 90.',
    swapped === true ? 'Longitude comes first: the two may be swapped.' : null,
  ],
  longitude: ({ found, ...thing }, say) => [
    `The ${nameOf(thing)} has the longitude ${say.found(found)}.`,
    'It should be from -180 to 180.',
  ],
  elevation: ({ found, range, ...thing }, say) => [
    `The ${nameOf(thing)} has the elevation ${say.found(found)} m.`,
    `It should be from ${say.bounds('length', range)}.`,
  ],
  tooManyEntrants: ({ entrants, most }, say) => [
    `All waves together have ${say.count(entrants)} entrants.`,
    `There should be at most ${say.count(most)}.`,
  ],
  markUnplaced: (thing) => [
    `The ${nameOf(thing)} has no place.`,
    'It should have one, or the name of a GPX waypoint that gives a distance.',
  ],
  markUnmeasured: (thing, say) => [
    `The ${nameOf(thing)} has no course distance.`,
    `It should have one, or a name such as ${say.quote('10 km')}.`,
  ],
  firstShare: ({ found }, say) => [
    `The first share is ${say.found(found)}.`,
    'It should be 0, for the fastest finisher.',
  ],
  lastShare: ({ found }, say) => [
    `The last share is ${say.found(found)}.`,
    'It should be 1, for the slowest finisher.',
  ],
  shareFalls: ({ found, before }, say) => [
    `The share ${say.found(found)} comes after ${say.found(before)}.`,
    'Shares should rise from one entry to the next.',
  ],
  timeFalls: () => [
    'This finish time is shorter than the one before.',
    'Times should not fall from one entry to the next.',
  ],
  rangeUpsideDown: ({ low, from, to, ...thing }, say) => {
    const { measured, limit } = say.compare(to, from);
    return [
      `The ${nameOf(thing)} is ${measured}, less than the ${nameOf({ keys: low, numbers: [] })}.`,
      `It should be at least ${limit}.`,
    ];
  },
  tooManyBoxes: ({ boxes, most }, say) => [
    `The trash would need ${say.count(boxes)} boxes.`,
    `There should be at most ${say.count(most)}.`,
    'Set the boxes farther apart.',
  ],
  timesBackwards: ({ from, to }, say) => [
    `Somebody on the roster comes at ${say.clock(from)} and leaves at ${say.clock(to)}.`,
    'The second time should be the later; after midnight hours pass 24.',
  ],
  partBackwards: ({ from, to }, say) => [
    `The part begins at ${say.far(from)} and ends at ${say.far(to)}.`,
    'It should end after it begins.',
    'For a stretch run the other way, add a reversed course.',
  ],
  heatStepsFall: ({ steps }, say) => [
    `The heat steps are ${say.found(steps[0])} and ${say.found(steps[1])} °C.`,
    'The lower step should come first.',
  ],
  noneOf: ({ choices, ...thing }, say) => [
    `The ${nameOf(thing)} is incomplete.`,
    `It should have ${say.any(choices.map((one) => choiceText[one]))}.`,
  ],
  together: ({ found, choices }, say) => [
    `There is both ${say.all(found.map((one) => choiceText[one]))}.`,
    `There should be only one: ${say.any(choices.map((one) => choiceText[one]))}.`,
  ],
});

const KINDS = {
  course: ['course', 'Courses of this plan'],
  race: ['race', 'Races of this plan'],
  station: ['station', 'Stations of this plan'],
} as const;

export const planReference: TextsOf<PlanParams>['plan-reference'] = byProblem({
  twice: ({ found, number, ...thing }, say) => [
    `The ${nameOf(thing)} is ${say.found(found)}, and so is the ${nameOf({ ...thing, numbers: [number] })}.`,
    'The two should differ.',
  ],
  missing: ({ of, name, ...thing }, say) => {
    const [kind, known] = KINDS[of];
    return [
      `There is no ${kind} ${say.found(name.word)} in this plan.`,
      `It is given as the ${nameOf(thing)}.`,
      suggested(name, known, `The plan has no ${kind} yet.`, say),
    ];
  },
  notServed: ({ name, ...thing }, say) => [
    `The ${nameOf(thing)} is ${say.found(name.word)}.`,
    'The station does not serve that race.',
    suggested(name, 'Races served here', 'It serves none.', say),
  ],
  sameNumber: ({ number, stations: [one, other] }, say) => [
    `Two stations keep the number ${number}: ${say.found(one)} and ${say.found(other)}.`,
    'Each should have its own.',
  ],
  circle: ({ way }, say) => [
    `Parts of courses go round in a circle: ${way.map(say.found).join(' → ')}.`,
    'A part should come from a course that does not lead back here.',
  ],
});
