/** Folders in which every call that writes can be made to fail: its inputs, and its targets with old bytes in them. */
import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What stands in a target before. */
export const OLD = 'old bytes\n';

const plan = (name: string): string =>
  JSON.stringify({
    format: 'halfcup-plan',
    version: 1,
    name,
    courses: [
      {
        id: 'c',
        line: [
          [-17.4, -33.2],
          [-17.3, -33.2],
        ],
        drawn: 'centre',
      },
    ],
    races: [
      { id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 300 }], finish: { median: '45 min', spread: 0.2 } },
    ],
    stations: [{ id: 's1', on: { course: 'c', measure: '3 km', side: 'right' } }],
  });

/** A folder with two plans, and every target there already with old bytes where `kept`. */
export function filledFolder(inside: string, kept: boolean): string {
  const own = mkdtempSync(join(inside, 'case-'));
  writeFileSync(join(own, 'p.json'), plan('Quay run'));
  writeFileSync(join(own, 'q.json'), plan('Mole run'));
  writeFileSync(
    join(own, 'c.gpx'),
    `<gpx version="1.1" creator="t"><trk><trkseg>${[0, 1, 2].map((k) => `<trkpt lat="-33.2" lon="${-17.4 + k / 100}"/>`).join('')}</trkseg></trk></gpx>`,
  );
  if (!kept) return own;
  writeFileSync(join(own, 'out.file'), OLD);
  writeFileSync(join(own, 'out.html'), OLD);
  mkdirSync(join(own, 'papers'));
  for (const name of ['index.html', 'overview.html', 'captains.html']) writeFileSync(join(own, 'papers', name), OLD);
  return own;
}

/** Calls that write, each into targets of `filledFolder`. */
export const WRITING_CALLS: readonly (readonly [title: string, call: readonly string[]])[] = [
  ['export --out', ['export', 'p.json', '--to', 'csv', '--out', 'out.file', '--force']],
  ['review --report', ['review', 'p.json', '--report', 'out.html', '--force']],
  ['sheets --out', ['sheets', 'p.json', '--out', 'papers', '--force']],
  ['start --out', ['start', 'New', 'c.gpx', '--every', '1km', '--out', 'out.file', '--force']],
  [
    'review --json-lines --out',
    ['review', 'p.json', 'q.json', '--json-lines', '--workers', '1', '--out', 'out.file', '--force'],
  ],
];

/** Names of all files and folders below, in order. */
export const filesIn = (path: string): string[] => readdirSync(path, { recursive: true }).map(String).toSorted();
