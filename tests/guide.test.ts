/** The guide for contributors tells the truth about the folders. Its finder is tried on an invented guide first. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';
import {
  type Building,
  brokenCommands,
  flowFaults,
  misplacedNames,
  missingPaths,
  tableFaults,
  untoldFolders,
} from './support/guide.ts';
import { FACES, ROOMS, VIEWER_ROOMS } from './support/house.ts';

const flow = (drawing: string): string => `# Guide\n\n\`\`\`\n${drawing}\n\`\`\`\n`;

describe('the finder', () => {
  const building: Building = {
    paths: new Set([
      'packages',
      'packages/core',
      'packages/core/src',
      'packages/core/src/gpx',
      'packages/core/src/gpx/read.ts',
      'packages/core/src/course',
      'packages/core/src/course/a.ts',
      'packages/core/src/units.ts',
      'scripts/start.mjs',
    ]),
    rooms: ['units.ts', 'gpx', 'course'],
    scripts: ['start'],
    described: ['packages/core/src'],
  };

  it('finds a path that is not there, wherever it may begin, and takes no command for one', () => {
    const guide =
      'See `gpx/read.ts`, `packages/core/src/gpx/`, `gpx/write.ts`, `halo.ts`, `@halfcup/core`, `npx -y pnpm@12 start`, `a < b/c` and `course/`.';
    expect(missingPaths(guide, building)).toEqual([
      'the guide names gpx/write.ts, which is not there',
      'the guide names halo.ts, which is not there',
    ]);
  });

  it('finds a name that is not in the file where the guide has it', () => {
    const texts: Readonly<Record<string, string>> = {
      'packages/core/src/gpx/read.ts': 'export function readGpx() {}',
      'packages/core/src/units.ts': '',
    };
    expect(
      misplacedNames(
        '`readGpx` (`gpx/read.ts`) and `metres` (`units.ts`, and more), `formOf` (`nowhere.ts`)',
        building,
        (path) => texts[path]!,
      ),
    ).toEqual([
      'the guide says that metres is in units.ts, which has no such name',
      'the guide says that formOf is in nowhere.ts, which has no such name',
    ]);
  });

  it('finds a folder that nobody told of', () => {
    expect(untoldFolders('Only `gpx/` is told.', building)).toEqual([
      'the guide does not name packages/core/src/course/',
    ]);
    expect(untoldFolders('`packages/core/src/gpx` and `course/`', building)).toEqual([]);
  });

  it('finds a room left out of the drawing, a stranger in it, and an order against the imports', () => {
    expect(flowFaults('no drawing', building)).toEqual(['the guide draws no flow']);
    expect(flowFaults(flow('units.ts ► gpx/ ► course/ ► gpx/'), building)).toEqual([]);
    expect(flowFaults(flow('course/ ► gpx/ ► attic/'), building)).toEqual([
      'the flow draws attic, which is no room of core',
      'the flow does not draw units.ts',
      'the flow draws gpx after course, which imports it',
    ]);
  });

  it('finds a room left out of the table of the viewer, a stranger in it, and an order against the imports', () => {
    const table = (...rows: string[]): string =>
      `# Guide\n\n| room of \`packages/viewer/src/\` | holds |\n|---|---|\n${rows.map((row) => `| ${row} | \`elsewhere/\` |\n`).join('')}\n`;
    const rooms = ['words.ts', 'state/store', 'state/view', 'map'];
    expect(tableFaults('no table', rooms)).toEqual(['the guide has no table of the viewer’s rooms']);
    expect(tableFaults(table('`words.ts`', '`state/store/`, `state/view/`', '`map/`'), rooms)).toEqual([]);
    expect(tableFaults(table('`state/view/`', '`state/store/`', '`attic/`'), rooms, ['words.ts'])).toEqual([
      'the table has attic, which is no room of the viewer',
      'the table does not have map',
      'the table has state/store after state/view, which may import it',
    ]);
  });

  it('finds a command that is not there', () => {
    const guide =
      '```sh\nnpx -y pnpm@12 start\nnpx -y pnpm@12 run lunt && npx -y pnpm@12 install\nnode --expose-gc scripts/start.mjs x\nbash .ci/walk\n```\n';
    expect(brokenCommands(guide, building)).toEqual([
      'the guide runs the script lunt, which is not there',
      'the guide runs .ci/walk, which is not there',
    ]);
  });
});

describe('DEVELOPERS.md', () => {
  const guide = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
  const left = /(?:^|\/)(?:node_modules|dist|\.git)(?:\/|$)/u;
  const under = (folder: string): string[] =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .map((path) => `${folder}/${path}`)
      .filter((path) => !left.test(path));
  const folders = [
    'packages/core/src',
    'packages/core/cli',
    'packages/core/bench',
    'packages/core/examples',
    'packages/core/api',
    'packages/viewer/src',
    'packages/viewer/bench',
    'scripts',
    'tests',
    'fixtures',
    '.ci',
    '.changeset',
  ];
  const top = readdirSync(ROOT).filter((path) => !left.test(path));
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const building: Building = {
    paths: new Set([
      ...top,
      'packages/core',
      'packages/viewer',
      ...readdirSync(join(ROOT, 'packages/core'))
        .map((name) => `packages/core/${name}`)
        .filter((path) => !left.test(path)),
      ...readdirSync(join(ROOT, 'packages/viewer'))
        .map((name) => `packages/viewer/${name}`)
        .filter((path) => !left.test(path)),
      ...folders,
      ...folders.flatMap(under),
    ]),
    rooms: ROOMS,
    scripts: Object.keys(scripts),
    described: [
      '',
      'packages',
      'packages/core',
      'packages/viewer',
      'packages/core/src',
      'packages/viewer/src',
      'packages/core/examples',
      'scripts',
      'tests',
    ],
  };

  it('reads the real folders', () => {
    for (const room of [...ROOMS, ...FACES]) expect(building.paths).toContain(`packages/core/src/${room}`);
    expect(building.paths.size).toBeGreaterThan(500);
  });

  it('names no path that is not there', () => expect(missingPaths(guide, building)).toEqual([]));

  it('has every name in the file where it says', () =>
    expect(misplacedNames(guide, building, (path) => readFileSync(join(ROOT, path), 'utf8'))).toEqual([]));

  it('names every folder of the packages, the scripts and the tests', () =>
    expect(untoldFolders(guide, building)).toEqual([]));

  it('draws every room of core in the order of imports', () => expect(flowFaults(guide, building)).toEqual([]));

  it('has every room of the viewer in the order of imports', () =>
    // A declaration for the compiler, which nobody imports.
    expect(tableFaults(guide, VIEWER_ROOMS, ['assets.d.ts'])).toEqual([]));

  it('tells every face', () => expect(FACES.filter((face) => !guide.includes(`\`${face}\``))).toEqual([]));

  it('keeps the first face small, as it says: every name in it is one to learn', () => {
    const listed = readFileSync(join(ROOT, 'packages/core/src/index.ts'), 'utf8').matchAll(
      /^export [^{]*\{([^}]*)\}/gmu,
    );
    const names = Array.from(listed).flatMap(([, inside]) => inside!.split(',').filter((name) => name.trim() !== ''));
    const [, most] = /`index\.ts` keeps to (\d+) names/u.exec(guide)!;
    expect(names.length).toBeGreaterThan(20);
    expect(names.length).toBeLessThanOrEqual(Number(most));
  });

  it('runs no command that is not there', () => expect(brokenCommands(guide, building)).toEqual([]));
});
