import type { OverviewText } from '../listsText.ts';

export const overview: OverviewText = {
  title: 'Overview',
  map: 'Map',
  strip: (course) => `${course}, drawn straight`,
  sides: 'Left-hand side above the line, right-hand side below, as the runners see them.',
  start: 'Start',
  finish: 'Finish',
  number: 'No.',
  name: 'Station',
  courses: 'Courses',
  elevation: (low, high) => `Elevation (grey): ${low} to ${high}`,
  starts: (first, last) => (last === null ? `starts ${first}` : `starts ${first} to ${last}`),
  found: (errors, warnings, notes) =>
    `review: ${errors} ${errors === 1 ? 'error' : 'errors'}, ${warnings} ${warnings === 1 ? 'warning' : 'warnings'}, ${notes} ${notes === 1 ? 'note' : 'notes'}`,
  north: 'N',
};
