/** The commands that read a plan. The examples run in the folder of the demo. */
import type { CommandSpec } from './call.ts';
import { VARIANT } from './options.ts';

const PLAN = {
  name: 'PLAN.json',
  about: 'the plan, beside the GPX files that it names; - is standard input, its files then in this folder',
} as const;

const layout: CommandSpec = {
  name: 'layout',
  takes: 'PLAN.json',
  needs: ['a plan'],
  most: 1,
  about: 'passes, sides, signs, tables, trash and spacing of a plan',
  arguments: [PLAN],
  options: [VARIANT],
  examples: ['layout plan.json', 'layout plan.json --variant "Lighthouse table moved" --units imperial'],
  load: async () => import('./commands/layout.ts'),
};

const raceday: CommandSpec = {
  name: 'raceday',
  takes: 'PLAN.json',
  needs: ['a plan'],
  most: 1,
  about: 'arrivals, cups, crew, supplies, drop and collection runs',
  exits: [['1', 'rows of --left or --roster could not be read; the others are used']],
  arguments: [PLAN],
  options: [
    VARIANT,
    { name: 'learn', kind: 'flag', about: 'print how much each runner took on a past day, from its counts ("used")' },
    { name: 'left-form', kind: 'flag', about: 'print the form for what is left at the stations after the day, as CSV' },
    {
      name: 'left',
      kind: 'text',
      shown: 'LEFT.csv',
      about: 'the form filled in: print what each runner took; --out writes the plan with the counts',
    },
    {
      name: 'roster',
      kind: 'text',
      shown: 'CREW.csv',
      about: 'a table of names and stations: print who is missing; --out writes the plan with the roster',
    },
    { name: 'lang', kind: 'text', shown: 'es', about: 'language of the form (default: that of the plan)' },
  ],
  examples: [
    'raceday plan.json',
    'raceday plan.json --units imperial',
    'raceday plan.json --learn',
    'raceday plan.json --left-form',
  ],
  load: async () => import('./commands/raceday.ts'),
};

const compare: CommandSpec = {
  name: 'compare',
  takes: 'PLAN.json VARIANT [VARIANT]',
  needs: ['a plan', 'the name of a variant'],
  most: 3,
  about: 'what changes between the main plan and a variant, or between two variants',
  arguments: [
    PLAN,
    { name: 'VARIANT', about: 'a variant of the plan by its name; one alone is compared with the main plan' },
  ],
  options: [],
  examples: [
    'compare plan.json "Lighthouse table moved"',
    'compare plan.json "Lighthouse table moved" "Green station nearer the park"',
  ],
  load: async () => import('./commands/compare.ts'),
};

const improve: CommandSpec = {
  name: 'improve',
  takes: 'PLAN.json',
  needs: ['a plan'],
  most: 1,
  about: 'better places for stations along the course, and whether there could be any better',
  more: [
    'Fewest errors first, then fewest warnings, then the shortest longest legs, then the least movement. Stations keep their order, side and offset, and what they serve; fixed ones stay. It cannot see driveways, permits or anything else that is not in the plan: walk each new place.',
    'A dozen stations take seconds, a hundred and more take minutes; after 10 minutes the best places found until then are given.',
  ],
  arguments: [PLAN],
  options: [
    { name: 'only', kind: 'text', shown: 's3,s5', about: 'move only these stations, by id or name' },
    { name: 'within', kind: 'length', shown: '500m', about: 'how far along the course a station may move' },
    { name: 'out', kind: 'text', shown: 'FILE', about: 'write the changed plan to a file; an existing one is kept' },
  ],
  examples: ['improve plan.json --only s7,s8', 'improve plan.json --only s7,s8 --within 300m --out better.json'],
  load: async () => import('./commands/improve.ts'),
};

const ground: CommandSpec = {
  name: 'ground',
  takes: 'FILE PLAN.json',
  needs: ['a street file', 'a plan'],
  most: 2,
  about: 'the streets beside the courses, cut from a map that you have saved',
  more: [
    'Keeps what lies within 300 m of a course: streets, paths, rails, water, buildings, crossings, hydrants, with the tags that Halfcup uses. The file may be large; it is read once, and what it is shows in its content, not in its name.',
    'OpenStreetMap data are © OpenStreetMap contributors, under the Open Database License 1.0. The credit is written into the file and has to be shown with the map.',
    'A map is good to metres and may be out of date. It moves no course and no distance.',
  ],
  arguments: [
    { name: 'FILE', about: 'OpenStreetMap data: .osm, .osm.gz, .osm.pbf, or GeoJSON with the same tags' },
    PLAN,
  ],
  options: [
    {
      name: 'out',
      kind: 'text',
      shown: 'FILE',
      about: 'write ground.geojson, the part that is kept; an existing file is kept',
    },
  ],
  examples: ['ground ground.geojson plan.json', 'ground ground.geojson plan.json --out clipped.geojson'],
  load: async () => import('./commands/ground.ts'),
};

const review: CommandSpec = {
  name: 'review',
  takes: 'PLAN.json …',
  needs: ['a plan'],
  most: Infinity,
  about: 'every check of a plan: what it found, what could not run, what is waived',
  more: [
    'Notes and waived findings do not change the exit status.',
    'Several plans need --json-lines; each line names its file. A plan that cannot be used has its problems on its line; the others are still reviewed, and the exit status is 2.',
  ],
  arguments: [PLAN],
  options: [
    { name: 'all', kind: 'flag', about: 'list every check, the measured values and the SHA-256 of every file' },
    {
      name: 'placed',
      kind: 'text',
      shown: 'PLACED.gpx',
      about: 'review the plan as built, by points recorded on the ground; name them such as "s1 sign"',
    },
    { name: 'strict', kind: 'flag', about: 'exit with 1 for a warning too' },
    {
      name: 'report',
      kind: 'text',
      shown: 'FILE.html',
      about: 'also write the report, to be printed and signed; an existing file only with --force',
    },
    { name: 'paper', kind: ['a4', 'letter'], about: 'size of the report’s paper (default: a4)' },
    { name: 'json-lines', kind: 'flag', about: 'print one JSON document per line, with its file' },
    {
      name: 'workers',
      kind: 'count',
      shown: '2',
      about: 'threads for several plans (default: one per processor)',
    },
  ],
  examples: ['review plan.json', 'review plan.json --all', 'review plan.json --report report.html'],
  exits: [['1', 'the review found an error that is not waived (with --strict also a warning)']],
  load: async () => import('./commands/review.ts'),
};

const sheets: CommandSpec = {
  name: 'sheets',
  outFolder: true,
  takes: 'PLAN.json --out FOLDER',
  needs: ['a plan'],
  most: 1,
  about: 'the papers of race day, as HTML files for a browser to print',
  more: [
    'Overview, captains’ sheets, volunteer cards, placement list, supply list, a run for each vehicle, collection, the reviewer’s report, and index.html, which links to them all.',
  ],
  arguments: [PLAN],
  options: [
    {
      name: 'out',
      kind: 'text',
      shown: 'FOLDER',
      about: 'where to write; creates the folder if needed, and keeps existing files',
    },
    { name: 'force', kind: 'flag', about: 'replace existing files' },
    { name: 'paper', kind: ['a4', 'letter'], about: 'size of the paper (default: a4)' },
    { ...VARIANT, about: 'apply this variant of the plan; each paper names it' },
    { name: 'lang', kind: 'text', shown: 'es', about: 'language of the papers (default: that of the plan)' },
  ],
  examples: ['sheets plan.json --out papers', 'sheets plan.json --out papers-es --lang es --paper letter'],
  load: async () => import('./commands/sheets.ts'),
};

const exporting: CommandSpec = {
  name: 'export',
  takes: 'PLAN.json --to geojson|gpx|csv|ics|order|crew',
  needs: ['a plan'],
  most: 1,
  about: 'the layout, crew times, supply order or crew needs, in a format for other tools',
  more: [
    'geojson: courses, stations and items for a map. gpx: courses and waypoints for a hand-held device. csv: every place as a table. ics: crew times for calendars, if the plan has a date, a time zone and waves. order: the supply order with costs and the days to order by, crew: people needed at each station by the hour, both as CSV, if the plan has waves.',
    '--to decides what is printed, even with --json; --units changes only the words in gpx.',
  ],
  arguments: [PLAN],
  options: [{ name: 'to', kind: ['geojson', 'gpx', 'csv', 'ics', 'order', 'crew'], about: 'the format' }, VARIANT],
  examples: ['export plan.json --to gpx --out stations.gpx', 'export plan.json --to csv'],
  load: async () => import('./commands/export.ts'),
};

const schema: CommandSpec = {
  name: 'schema',
  takes: 'NAME',
  needs: ['the name of a schema'],
  most: 1,
  about: 'the JSON Schema of a plan, or of what a command prints as JSON',
  more: [
    'With --json a call that is refused prints one line on stderr: { "problems": [...] }, each as schema finding says.',
  ],
  arguments: [
    {
      name: 'NAME',
      about: 'plan, finding, or a command: course, snap, layout, raceday, compare, improve, review, ground',
    },
  ],
  options: [],
  examples: ['schema plan', 'schema layout --out layout.schema.json'],
  load: async () => import('./commands/schema.ts'),
};

export const PLAN_COMMANDS: readonly CommandSpec[] = [
  layout,
  raceday,
  compare,
  improve,
  review,
  sheets,
  exporting,
  ground,
  schema,
];
