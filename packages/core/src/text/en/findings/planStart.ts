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
