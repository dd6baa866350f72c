/** What a plan's courses miss in the files that it names. */
import { byProblem } from '../../byProblem.ts';
import type { SourceParams } from '../../params/plan.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { suggested } from '../planValues.ts';

const markText = (name: string | undefined, say: Say): string =>
  name === undefined ? 'A mark' : `Mark ${say.found(name)}`;

export const planSources: TextsOf<SourceParams> = {
  'text-encoding': byProblem({
    wide: ({ encoding }) => [`This file is in ${encoding}.`, 'It should be text in UTF-8.', 'Save it again as UTF-8.'],
    invalid: ({ byte, at }, say) => [
      `Byte ${say.count(at)} of this file (hex ${byte}) is not valid UTF-8.`,
      null,
      'Save the file again as UTF-8, so that no letter is lost.',
    ],
    binary: ({ byte, at }, say) => [
      `This file holds binary data, not text: byte ${say.count(at)} is hex ${byte}.`,
      'It should be text in UTF-8.',
      'Choose another file.',
    ],
  }),
  'gpx-missing': ({ gpx }, say) => [
    `The file ${say.found(gpx)} was not found beside the plan.`,
    null,
    'Put it there, or correct its name in the plan.',
  ],
  'mark-unknown': byProblem({
    unmeasured: ({ name, waypoint }, say) => [
      `${markText(name, say)} gives no course distance.`,
      `It should have one, or a name such as ${say.quote('10 km')} or ${say.quote('mile 6')}.`,
      waypoint === undefined ? null : suggested(waypoint, 'Waypoints', 'There are no waypoints.', say),
    ],
    unplaced: ({ name, gpx, waypoint }, say) => [
      `${markText(name, say)} has no place: ${
        gpx === undefined
          ? 'the course has no GPX file of its own'
          : `${say.found(gpx.file)} has ${gpx.waypoints === 0 ? 'no waypoint' : `${say.count(gpx.waypoints)} waypoints`} of that name`
      }.`,
      'It should be the name of exactly one waypoint, or have a place.',
      waypoint === undefined ? null : suggested(waypoint, 'Waypoints', 'There are no waypoints.', say),
    ],
  }),
};
