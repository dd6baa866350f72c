/** The commands that read a course. The examples run in the folder of the demo. */
import type { CommandSpec } from './call.ts';
import { KNOWN, LINE } from './options.ts';

const GPX = { name: 'FILE.gpx', about: 'the course: a GPX track or route; - is standard input' } as const;

const course: CommandSpec = {
  name: 'course',
  takes: 'FILE.gpx',
  needs: ['a GPX file'],
  most: 1,
  about: 'the facts of a course: length, points, gaps, ascent',
  more: [
    'A mark is a point of known course distance: give its place or a waypoint’s name, and the distance. A waypoint called "10 km" or "mile 6" needs no distance. Marks and length stretch the line to fit.',
  ],
  arguments: [GPX],
  options: [
    ...LINE,
    { name: 'clean', kind: 'flag', about: 'leave out spikes, and tangles recorded while standing still; list them' },
    ...KNOWN,
    { name: 'waypoint-marks', kind: 'flag', about: 'take every waypoint that is named by a distance as a mark' },
  ],
  examples: ['course full.gpx', 'course full.gpx --length 42.195km --units imperial'],
  load: async () => import('./commands/course.ts'),
};

const snap: CommandSpec = {
  name: 'snap',
  takes: 'FILE.gpx [LON,LAT …]',
  needs: ['a GPX file'],
  most: Infinity,
  about: 'each time the course passes a point: course distance, side, direction',
  arguments: [GPX, { name: 'LON,LAT', about: 'a point in degrees; without any, the waypoints of the file' }],
  options: [
    { name: 'radius', kind: 'length', shown: '60m', about: 'how near the course must come for a pass' },
    { name: 'r95', kind: 'length', shown: '5m', about: 'error of a point: the radius that holds 95 % of readings' },
    { name: 'course-r95', kind: 'length', shown: '3m', about: 'the same for the course' },
    ...LINE,
  ],
  examples: ['snap full.gpx -17.3864922,-33.2319296', 'snap full.gpx -17.3864922,-33.2319296 --radius 100yd'],
  load: async () => import('./commands/snap.ts'),
};

const start: CommandSpec = {
  name: 'start',
  takes: 'NAME FILE.gpx …',
  needs: ['a name for the plan', 'a GPX file'],
  most: Infinity,
  about: 'a first plan from one or several courses: their waypoints, places along them or a list become stations',
  more: [
    'Without --every or --at it takes the waypoints of the file. Those named by a distance, such as "10 km", become marks of the course. A "Start" or "Finish" at the ends is left out. Each of these is reported.',
    'A list of stations (--stations) is CSV, or has semicolons or tabs, with heads in English or Spanish: name, course, distance or lon and lat, side, serves, tables, width. Rows that cannot be used are reported and left out.',
    'A race (--race) is said as "name=Half, file=half.gpx, start=08:00, entrants=1200, finish=2:10, cutoff=3:30": finish is what a typical runner takes, cutoff the time limit, both in hours and minutes or as 0:28:30; cutoff-at=11:30 is a cutoff by the clock. With turn-at=2.5 km it runs from the start to there and back, with laps=2 two laps of the course: the plan gets a course of those parts. Finish times are spread about the typical one by 0.2 (common practice, no source). Without --race each course has one race.',
    'With --units metric the plan lays out signs, tables and trash in round metres.',
  ],
  arguments: [
    { name: 'NAME', about: 'what the plan is called' },
    { name: 'FILE.gpx', about: 'a course: a GPX track or route, which the plan then names' },
  ],
  options: [
    { name: 'every', kind: 'length', shown: '2.5km', about: 'a station at every multiple of this distance' },
    { name: 'at', kind: 'lengths', shown: '5km,10km', about: 'stations at these course distances' },
    {
      name: 'side',
      kind: ['right', 'left', 'alternate'],
      about: 'side of the road (default with --every and --at: right)',
    },
    { name: 'stations', kind: 'text', shown: 'LIST.csv', about: 'take the stations of a list' },
    {
      name: 'stations-on',
      kind: 'text',
      shown: 'FILE.gpx',
      about: 'the course of the list’s distances (default: the first)',
    },
    { name: 'date', kind: 'text', shown: '2027-09-12', about: 'day of the race' },
    { name: 'emergency', kind: 'text', shown: 'NUMBER', about: 'the number to call in an emergency' },
    { name: 'race', kind: 'repeated', shown: 'RACE', about: 'a race with its times and runners, see above' },
    ...KNOWN,
    ...LINE,
  ],
  examples: [
    'start "Our race" full.gpx --every 5km --side right',
    'start "Our races" full.gpx half.gpx --race "name=Half, file=half.gpx, start=08:30, entrants=900, finish=2:05, cutoff=3:30" --every 5km',
    'start "Our race" full.gpx --at 5km,10km,15km --units metric --out race.json',
  ],
  load: async () => import('./commands/start.ts'),
};

export const COURSE_COMMANDS: readonly CommandSpec[] = [course, snap, start];
