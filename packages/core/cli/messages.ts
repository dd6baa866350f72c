/** Sentences of the command line itself, by theme. Findings on plans and courses come with their own. */

/** "1 error", "3 errors" */
export const counted = (count: number, noun: string): string =>
  `${count.toLocaleString('en')} ${noun}${count === 1 ? '' : 's'}`;

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** A call that cannot be used. */
export const CALL = {
  noCommand: () => 'no command given',
  unknownCommand: (name: string, hint: string) => `unknown command "${name}"; ${hint}`,
  unknownOption: (option: string, hint: string) => `unknown option "${option}"; ${hint}`,
  twice: (option: string) => `--${option} is given twice; give it once`,
  noValue: (option: string) => `--${option} takes no value`,
  valueMissing: (option: string, example: string) => `--${option} needs a value, such as --${option} ${example}`,
  choiceMissing: (option: string, choices: readonly string[]) => `--${option} needs a value: ${listed(choices)}`,
  notAChoice: (option: string, text: string, hint: string) => `"${text}" is no value for --${option}; ${hint}`,
  notACount: (option: string, text: string, most: number, example: string) =>
    `"${text}" is no value for --${option}; give a whole number from 1 to ${most}, such as --${option} ${example}`,
  emptyArgument: (command: string, needs: string) => `an argument is empty; ${command} needs ${needs}`,
  argumentMissing: (command: string, needs: string, got: readonly string[]) =>
    `${command} needs ${needs}${got.length === 0 ? '' : `; only "${got.join('", "')}" is given`}`,
  tooMany: (command: string, needs: string, extra: string) =>
    `too many arguments: "${extra}"; ${command} takes ${needs}`,
  seeHelp: (message: string, command: string) => `${message} (see npx halfcup ${command} --help)`,
} as const;

/** Points and marks that a call gives. */
export const POINTS = {
  notAPoint: (token: string) => `"${token}" is no point; give LON,LAT in degrees, such as -17.44,-33.19`,
  latitude: (token: string, latitude: string, swapped: string | null) =>
    `latitude ${latitude} in "${token}" is not between -90 and 90${swapped === null ? '' : `; longitude comes first: the two may be swapped (${swapped})`}`,
  longitude: (token: string, longitude: string) => `longitude ${longitude} in "${token}" is not between -180 and 180`,
  mayBeSwapped: (token: string, km: string, swapped: string) =>
    `${token} is ${km} km from the course; longitude comes first: the two may be swapped (${swapped})`,
  none: () => 'The file has no waypoints, and no point is given. Give points as LON,LAT after the file.',
  markWithoutDistance: (token: string) => `--mark "${token}" has no distance; give LON,LAT=10km`,
  markProblem: (token: string, problem: string) => `--mark "${token}": ${problem}`,
  noWaypointMarks: (near: readonly string[]) =>
    `--waypoint-marks: no waypoint of the file is named by a distance alone, such as "10 km" or "mile 6"${
      near.length === 0
        ? ''
        : `; if ${listed(near.slice(0, 5))} is meant, give its name and distance, such as --mark ${near[0]}=10km`
    }`,
  waypointLeftAside: (name: string) =>
    `Waypoint "${name}" mentions a distance but is not named by it alone: it is not used as a mark. If it is one, add --mark "${name}=…" with the distance.`,
} as const;

/** What a command cannot do, or leaves out. */
export const REFUSAL = {
  placedOfOne: () => '--placed and --json-lines do not go together: recorded points are of one plan',
  paperOfReport: () => '--paper is the size of the report: it needs --report FILE.html',
  reportOfOne: () => '--report and --json-lines do not go together: a report is of one plan',
  workersAlone: () => '--workers needs --json-lines: one plan is reviewed in one thread',
  onePlan: (count: number) =>
    `review takes one plan, and ${count} are given; --json-lines reviews several, one JSON document per line`,
  sameFile: (file: string) => `--report and --out both name "${file}"; give two files`,
  reportNotHtml: (file: string) => `--report writes HTML; "${file}" does not end in .html`,
  noSchema: (name: string, hint: string) => `there is no schema "${name}"; ${hint}`,
  inputOfOne: () => '"-" and --json-lines do not go together: standard input is one plan; use --json',
  noFormat: () => 'export needs a format: --to geojson, gpx, csv, ics, order or crew',
  noFolder: () => 'sheets needs a folder for the papers, such as --out papers',
  noWaves: () =>
    'No race of the plan has waves, so arrivals are not known. Give a race "waves", each with "time" and "entrants", and its "finish" times.',
  noSuchStations: (names: readonly string[], known: readonly string[]) =>
    `no station ${names.map((name) => `"${name}"`).join(', ')} for --only; ${
      known.length === 0 ? 'this plan has no stations' : `stations of this plan: ${known.join(', ')}`
    }`,
  noPlacedPoints: () =>
    'The file has no waypoints. Record one for each sign, table and trash drop, named such as "s1 sign".',
  leftOut: (what: string) => `Left out: ${what}`,
  drawingLeftOut: (name: string, why: string) =>
    `The background drawing "${name}" is left out: ${why.replace(/\.$/u, '')}.`,
  drawingOutside: () => 'it is a link to a file outside the plan’s folder; copy it there',
  drawingUnread: () => 'it is no FeatureCollection (GeoJSON, RFC 7946)',
  courseOutside: (folder: string) =>
    `The course is not in the plan’s folder${folder === '.' ? ' (the one you are in)' : ` (${folder})`}. A plan names files in its own folder or below: copy the course there first.`,
  courseBeside: (name: string) =>
    `A plan names files in its own folder or below: keep this plan in the folder of ${name}.`,
  linkOutside: (name: string) =>
    `"${name}" is a link to a file outside the plan’s folder. A plan names files in its own folder or below: copy it there.`,
} as const;

/** Races and stations of a first plan. */
export const START = {
  noFile: () =>
    'a plan names the files of its courses, and standard input (-) has no name; save the GPX file and start with its name',
  ofOneCourse: (options: readonly string[]) =>
    `${options.map((name) => `--${name}`).join(', ')} cannot be used with several courses, a list or races; start with one course alone, or write it into the plan afterwards`,
  listAndPlaces: () =>
    'the stations come from a list (--stations), so --every and --side have nothing to do; leave them out',
  raceUnread: (text: string) =>
    `--race "${text}" cannot be read; write it such as "name=Half, file=half.gpx, start=08:00, entrants=1200, finish=2:10, cutoff=3:30"`,
  raceKey: (key: string, hint: string) => `--race has no "${key}"; ${hint}`,
  raceTwice: (text: string, key: string) => `--race "${text}" says ${key} twice; say it once`,
  raceWithout: (text: string, key: string) => `--race "${text}" has no ${key}; add ${key}=…`,
  raceFile: (file: string, files: readonly string[]) =>
    `--race names the file "${file}", which is none of the courses: ${files.map((one) => `"${one}"`).join(', ')}`,
  listFile: (file: string, files: readonly string[]) =>
    `--stations-on names the file "${file}", which is none of the courses: ${files.map((one) => `"${one}"`).join(', ')}`,
  sameName: (name: string) =>
    `two files would be called "${name}" in the plan; rename one, or use --out in a folder above both`,
} as const;

/** Files that cannot be read or written. */
export const FILES = {
  noFolder: () => 'folder not found; create it first, or choose another',
  isInput: () => 'this plan, course or other file is being read and would be lost; choose another name',
  gpxLost: () => 'this command writes no GPX, and a course of that name would be lost; choose another ending',
  exists: () => 'this file exists already; choose another folder, or replace it with --force',
  folderIsFile: () => 'this is a file; give a folder',
  unknown: (reason: string) => `the file cannot be used (${reason})`,
} as const;

/** Memory that was too little. */
export const MEMORY = {
  short: () =>
    'reviewing this plan takes more memory than Node gives; give it more, such as NODE_OPTIONS=--max-old-space-size=8192 (in MB), or use fewer --workers',
} as const;

/** Failed system calls by their codes. */
export const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'file not found; check the name or the folder',
  NOLINK: 'this link leads nowhere; give the name of a file',
  NOTFILE: 'this is a pipe, a device or a socket; give a file, or - for what comes in by standard input',
  EAGAIN: 'this file has no end that can be read; copy what it holds into a file of its own',
  EISDIR: 'this is a folder; give the name of a file in it',
  ENOTDIR: 'part of this path is a file, not a folder; check the name',
  EACCES: 'permission denied; change the permissions of the file',
  EPERM: 'permission denied; change the permissions of the file',
  EEXIST: 'this file exists already; choose another name, or replace it with --force',
  ENAMETOOLONG: 'the name is too long for a file; choose a shorter one',
  ELOOP: 'this link leads back to itself; give the name of the file',
  EROFS: 'this file system is read-only; choose another folder',
  EDQUOT: 'the disk quota is used up; free some space, or choose another disk',
  ENOSPC: 'the disk is full; free some space, or choose another disk',
};
