/** Waypoints and calendars. */
import type { ExportsParams } from '../../params/exports.ts';
import type { TextsOf } from '../../sentence.ts';

const ENDS = { whole: '', first: ' (first end)', last: ' (last end)' } as const;

export const exports: TextsOf<ExportsParams> = {
  'export-unplaced': ({ items }, say) => [
    `These have no place on the ground: ${say.all(items.map(({ item, end }) => `${say.itemInside(item)}${ENDS[end]}`))}.`,
    'The GPX file leaves them out; the layout says why.',
  ],
  'calendar-no-clock': ({ missing }) =>
    missing === 'date'
      ? [
          'The plan has no date.',
          'A calendar needs one to say when the crews come.',
          'Add the date, such as 2027-09-12.',
        ]
      : [
          'The plan has no time zone.',
          'A calendar needs one to say when the crews come.',
          'Add its name in the IANA time zone database, such as Atlantic/Azores.',
        ],
  'calendar-no-times': ({ problem }) =>
    problem === 'noWaves'
      ? [
          'No race of the plan has waves.',
          'Crew times come from the arrivals of runners.',
          'Add waves and finish times to a race.',
        ]
      : [
          'Nobody arrives at any station.',
          'A calendar holds the crew times of stations.',
          'Let a station serve a race, or fix the waves of the race.',
        ],
  'calendar-left-out': () => ['Nobody arrives here, so the crew has no times.', 'The calendar leaves the station out.'],
  'calendar-clock-change': ({ date, time, problem }, say) =>
    problem === 'skipped'
      ? [
          `The time ${say.clock(time)} on ${date} does not exist: clocks go forward past it.`,
          'It is read as if the clocks had not changed yet.',
          'Tell the crew which time is meant.',
        ]
      : [
          `The time ${say.clock(time)} on ${date} comes twice: clocks go back.`,
          'The first one is used.',
          'Tell the crew which time is meant.',
        ],
};
