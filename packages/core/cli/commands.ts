/** The commands, in the order of help. A command is listed here once it exists. */
import type { CommandSpec, OptionSpec } from './call.ts';

/** Which line of a GPX file is the course, and how it is read. */
const LINE: readonly OptionSpec[] = [
  {
    name: 'track',
    kind: 'text',
    shown: 'NAME',
    about: 'name or index of the track or route, where the file has several',
  },
  {
    name: 'gaps',
    kind: ['refuse', 'join', 'skip'],
    about: 'what to do with gaps over 50 m between segments (usually refuse)',
  },
  { name: 'reverse', kind: 'flag', about: 'run it from its last point to its first' },
];

/** What is known of the distances of a course. */
const KNOWN: readonly OptionSpec[] = [
  { name: 'length', kind: 'length', shown: '42.195km', about: 'the known length of the course' },
  {
    name: 'mark',
    kind: 'repeated',
    shown: 'LON,LAT=10km',
    about: 'a known mark, or NAME=10km, or NAME; may be repeated',
  },
];

export const COMMANDS: readonly CommandSpec[] = [
  {
    name: 'course',
    takes: 'FILE.gpx',
    needs: ['a GPX file'],
    most: 1,
    about: 'the facts of a course: length, points, gaps, ascent',
    more: [
      'A mark is a point whose course distance is known: its place or the name of a waypoint, and the distance',
      '(a waypoint called "10 km" or "mile 6" says its own). Marks and length stretch the line between them.',
    ],
    options: [
      ...LINE,
      { name: 'clean', kind: 'flag', about: 'leave out spikes and standing-still tangles; each is named' },
      ...KNOWN,
      { name: 'waypoint-marks', kind: 'flag', about: 'take every waypoint whose name says a distance as a mark' },
    ],
    load: async () => import('./commands/course.ts'),
  },
  {
    name: 'snap',
    takes: 'FILE.gpx [LON,LAT …]',
    needs: ['a GPX file'],
    most: Infinity,
    about: 'every time the course runs by a point: course distance, side, direction',
    more: ['Without points it takes the waypoints of the file. Longitude comes first.'],
    options: [
      { name: 'radius', kind: 'length', shown: '60m', about: 'how near the course must come for a pass' },
      { name: 'r95', kind: 'length', shown: '5m', about: 'radius that holds the true point in 95 of 100 cases' },
      { name: 'course-r95', kind: 'length', shown: '3m', about: 'the same of the course line' },
      ...LINE,
    ],
    load: async () => import('./commands/snap.ts'),
  },
  {
    name: 'start',
    takes: 'NAME FILE.gpx',
    needs: ['a name for the plan', 'a GPX file'],
    most: 2,
    about: 'a first plan: waypoints become stations, or places along the course',
    more: [
      'Without --every or --at it takes the waypoints of the file; those called by a distance, such as "10 km", become',
      'marks of the course, a "Start" or "Finish" that stands there is left out, and each of these is said.',
      'With --units metric the plan lays out signs, tables and trash in round metres.',
    ],
    options: [
      { name: 'every', kind: 'length', shown: '2.5km', about: 'a station every so far' },
      { name: 'at', kind: 'lengths', shown: '5km,10km', about: 'stations at these course distances' },
      {
        name: 'side',
        kind: ['right', 'left', 'alternate'],
        about: 'side of the road (right, where places are along the course)',
      },
      ...KNOWN,
      ...LINE,
    ],
    load: async () => import('./commands/start.ts'),
  },
  {
    name: 'layout',
    takes: 'PLAN.json',
    needs: ['a plan'],
    most: 1,
    about: 'passes, sides, signs, tables, trash and spacing of a plan',
    options: [{ name: 'variant', kind: 'text', shown: 'NAME', about: 'with this variant of the plan laid over' }],
    load: async () => import('./commands/layout.ts'),
  },
  {
    name: 'raceday',
    takes: 'PLAN.json',
    needs: ['a plan'],
    most: 1,
    about: 'arrivals, cups, pre-pour, crew, drop and collection runs',
    options: [
      { name: 'variant', kind: 'text', shown: 'NAME', about: 'with this variant of the plan laid over' },
      { name: 'learn', kind: 'flag', about: 'print the take rates that the counts of a past day ("used") teach' },
    ],
    load: async () => import('./commands/raceday.ts'),
  },
  {
    name: 'compare',
    takes: 'PLAN.json VARIANT [VARIANT]',
    needs: ['a plan', 'the name of a variant'],
    most: 3,
    about: 'what changes between the plan and a variant, or between two',
    more: ['With one variant it is held against the plan as it is, which is called "as planned".'],
    options: [],
    load: async () => import('./commands/compare.ts'),
  },
  {
    name: 'improve',
    takes: 'PLAN.json',
    needs: ['a plan'],
    most: 1,
    about: 'better places for stations along the course, and whether any are better still',
    more: [
      'Fewest errors first, then warnings, then the shortest longest legs, then the least movement. Stations keep',
      'their order, side and offset, and what they serve; fixed ones stay. Prints the proposal; --out writes the changed plan.',
    ],
    options: [
      { name: 'only', kind: 'text', shown: 's3,s5', about: 'move these stations only' },
      { name: 'within', kind: 'length', shown: '500m', about: 'how far along the course a station may move' },
    ],
    load: async () => import('./commands/improve.ts'),
  },
  {
    name: 'review',
    takes: 'PLAN.json …',
    needs: ['a plan'],
    most: Infinity,
    about: 'every check of a plan: what it found, what could not run, what is waived',
    more: [
      'Ends with 1 where an error is found that nobody has waived; notes and waived findings never do that.',
      'Several plans need --json-lines: each line names its file; a plan that cannot be used has its problems there,',
      'the others are still reviewed, and it ends with 2. Lines have the order of the plans; threads work side by side.',
    ],
    options: [
      {
        name: 'placed',
        kind: 'text',
        shown: 'PLACED.gpx',
        about: 'hold points recorded on the ground against the plan; name them such as "s1 sign"',
      },
      { name: 'strict', kind: 'flag', about: 'end with 1 also where a warning is found' },
      {
        name: 'report',
        kind: 'text',
        shown: 'FILE.html',
        about: 'write the report too, to be printed and signed; an existing file only with --force',
      },
      { name: 'json-lines', kind: 'flag', about: 'print one JSON document a line, with its file' },
      {
        name: 'workers',
        kind: 'count',
        shown: '2',
        about: 'threads that review several plans (usually one a processor, never more than plans)',
      },
    ],
    load: async () => import('./commands/review.ts'),
  },
  {
    name: 'sheets',
    takes: 'PLAN.json --out FOLDER',
    needs: ['a plan'],
    most: 1,
    about: 'the papers of race day as HTML files to be printed by a browser',
    more: [
      'Overview, captains’ sheets, volunteer cards, placement list, supply list, a run for each vehicle, collection and',
      'the reviewer’s report, and index.html, which names them all. The folder is made where it is not there; files in it are kept',
      'unless --force is said. Prints what it has written.',
    ],
    options: [
      { name: 'paper', kind: ['a4', 'letter'], about: 'the size of the paper (usually a4)' },
      {
        name: 'variant',
        kind: 'text',
        shown: 'NAME',
        about: 'with this variant of the plan laid over; each paper says so',
      },
      { name: 'lang', kind: 'text', shown: 'es', about: "the papers' language in place of the plan's own" },
    ],
    load: async () => import('./commands/sheets.ts'),
  },
  {
    name: 'export',
    takes: 'PLAN.json --to geojson|gpx|csv|ics',
    needs: ['a plan'],
    most: 1,
    about: 'the layout, or the crew times, in a format for other tools',
    more: [
      'geojson: courses, stations, items for a map. gpx: courses and waypoints for a hand-held device. csv: every place',
      'as a table. ics: crew times for calendars, where the plan has a date, a time zone and waves.',
      'What is printed is what --to says, with --json too; --units changes the words in gpx only.',
    ],
    options: [
      { name: 'to', kind: ['geojson', 'gpx', 'csv', 'ics'], about: 'the format' },
      { name: 'variant', kind: 'text', shown: 'NAME', about: 'with this variant of the plan laid over' },
    ],
    load: async () => import('./commands/export.ts'),
  },
];
