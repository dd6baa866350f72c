/** Choosing a track or route of a file. */
import type { LineName, TrackParams } from '../../params/gpx.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';

/** "0: “Full”, 1: a route without a name and 3 more". */
function listed(lines: readonly LineName[], count: number, say: Say): string {
  const names = lines.map(
    ({ kind, name }, k) => `${k}: ${name === null ? `a ${kind} without a name` : say.quote(name)}`,
  );
  return `${names.join(', ')}${count > lines.length ? ` and ${say.count(count - lines.length)} more` : ''}`;
}

export const tracks: TextsOf<TrackParams> = {
  'track-unknown': (params, say) => {
    const file = params.file ?? 'The file';
    if (params.problem === 'none')
      return [`${file} has no track or route with points.`, 'It should have one to be the course.'];
    const track = say.quote(params.track);
    if (params.problem === 'empty')
      return [`The track or route ${track} in ${params.file ?? 'the file'} has no points.`];
    const lines = listed(params.lines, params.count, say);
    if (params.problem === 'ambiguous')
      return [
        `${file} has ${params.same} tracks or routes named ${track}.`,
        null,
        `Choose one by its number: ${lines}.`,
      ];
    return params.count === 0
      ? [`${file} has no track or route ${track}, nor any other.`]
      : [`${file} has no track or route ${track}.`, null, `Choose one of these: ${lines}.`];
  },
  'track-chosen': ({ lines, count, taken }, say) => [
    `The file has ${say.count(count)} tracks and routes: ${listed(lines, count, say)}.`,
    `Number ${taken} is taken as the course.`,
    'If that is wrong, choose another track.',
  ],
};
