/** What the first plan of a course could not be made of, and what it was made of. */
import { byProblem } from '../../byProblem.ts';
import type { PlanParams } from '../../params/plan.ts';
import type { TextsOf } from '../../sentence.ts';
import { listed } from '../planValues.ts';

const SAY_WHERE = 'Give a spacing, or the course distances at which stations should stand.';

export const startPlaces: TextsOf<PlanParams>['start-places'] = byProblem({
  everyAndAt: () => [
    'Both a spacing and course distances were given.',
    null,
    'Give one of them, or neither to use the waypoints of the file.',
  ],
  noWaypoints: () => ['The file has no waypoints to make stations of.', null, SAY_WHERE],
  noStations: () => ['No waypoint of the file became a station.', null, SAY_WHERE],
  every: ({ every, length, most }, say) => [
    typeof every === 'number'
      ? `A station was asked for every ${every < 1000 ? say.length(every) : say.far(every)} on a course of ${say.far(length)}.`
      : `The spacing is ${say.found(every)}; the course is ${say.far(length)} long.`,
    `The spacing should be shorter than the course, for at most ${say.count(most)} stations.`,
  ],
  repeated: ({ measure }, say) => [
    `The place at ${say.far(measure)} was given more than once.`,
    'It became one station.',
  ],
  unusedMarks: ({ names, more }, say) => [
    `Waypoints named by a distance were not used: ${listed(names, more, say)}.`,
    null,
    'If they are surveyed marks of the course, add them as marks.',
  ],
});

export const startWaypoint: TextsOf<PlanParams>['start-waypoint'] = byProblem({
  mark: ({ name }, say) => [
    `Waypoint ${say.found(name)} became a mark of the course, not a station.`,
    null,
    'If it is a station, move it from the marks of the course to the stations.',
  ],
  end: ({ name, end }, say) => [
    `Waypoint ${say.found(name)} was left out: it is at the ${end} of the course, which needs no station.`,
  ],
  offCourse: ({ name }, say) => [
    `Waypoint ${say.found(name)} is named by a distance, but the course does not pass it.`,
    'It became a station, not a mark.',
    'Correct it, or reverse the course, and start again.',
  ],
  unordered: ({ name }, say) => [
    `Waypoint ${say.found(name)} is named by a distance, but such distances do not rise along the course.`,
    'It became a station, not a mark.',
    'Correct them, or reverse the course, and start again.',
  ],
});

const RACE_FIELDS = {
  turnAt: ['a turning place', 'a course distance over 0, such as 2.5'],
  laps: ['a number of laps', 'a whole number from 1 to 99'],
  start: ['a start time', 'a time of day such as 08:00'],
  entrants: ['a number of runners', 'a whole number of 1 or more'],
  finish: ['a finish time', 'hours and minutes such as 2:10, or a time such as 0:28:30 or 130 min'],
  cutoff: ['a time limit', 'hours and minutes such as 3:30, or a time such as 210 min'],
  cutoffAt: ['a time of day', 'a time such as 11:30'],
} as const;

/** A time with one colon that would be hours and minutes, as minutes and seconds. */
const asMinutes = (found: unknown): string | null => {
  const match = typeof found === 'string' ? /^(\d{1,2}):([0-5]\d)$/u.exec(found) : null;
  return match === null || Number(match[1]) > 59 ? null : `0:${match[1]!.padStart(2, '0')}:${match[2]!}`;
};

export const setUpTexts: Pick<TextsOf<PlanParams>, 'setup-race' | 'setup-file' | 'setup-every'> = {
  'setup-race': byProblem({
    value: ({ field, found }, say) => [
      `${say.found(found)} is not ${RACE_FIELDS[field][0]}.`,
      `It should be ${RACE_FIELDS[field][1]}.`,
    ],
    twoShapes: () => ['The race has a turning place and laps.', 'It should have one of them.'],
    turnPast: ({ measure, length }, say) => [
      `The race turns at ${say.far(measure)}, but its course is ${say.far(length)} long.`,
      'It should turn before the end of the course.',
    ],
    noName: () => ['The race has no name.', null, 'Give it one.'],
    noEntrants: () => ['The race has a start time but no runners.', null, 'Give the number of runners entered.'],
    noStart: ({ of }) => [
      of === 'entrants' ? 'The race has runners but no start time.' : 'A time limit counts from a start time.',
      null,
      'Give the start time.',
    ],
    twoCutoffs: () => ['The race has a time limit and a cutoff by the clock.', 'It should have one of them.'],
    cutoffFirst: ({ start, cutoff }, say) => [
      `The cutoff at ${say.clock(cutoff)} is not after the start at ${say.clock(start)}.`,
      'It should be later. Times after midnight pass 24:00.',
    ],
    pace: ({ found, time, length }, say) => {
      const minutes = asMinutes(found);
      return [
        `${say.found(found)} is ${say.duration(time)} for ${say.far(length)}, which nobody takes.`,
        'With one colon a time is hours and minutes.',
        minutes === null ? 'Check the time and the course.' : `Write minutes and seconds as ${minutes}.`,
      ];
    },
  }),
  'setup-file': byProblem({
    course: ({ gpx }, say) => [`The course file ${say.found(gpx)} was not given.`, null, 'Add that file.'],
    race: ({ gpx }, say) => [
      `A race runs on the course of ${say.found(gpx)}, which is none of the courses.`,
      null,
      'Choose one of the files that were given.',
    ],
  }),
  'setup-every': ({ every, most }, say) => [
    `A station every ${every < 1000 ? say.length(every) : say.far(every)} makes none on these courses, or more than ${say.count(most)}.`,
    'The spacing should be over 0 and shorter than a course.',
  ],
};
