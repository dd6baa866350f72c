/**
 * Finds where a source tree breaks the house's order: imports that go up, go in a circle, reach what
 * only Node or a browser has, or name a package that is not a dependency. Works on texts by path, so
 * that it can be tried on an invented tree.
 */
import { posix } from 'node:path';

/** Texts of source files by path from the root of the repository, with `/` between folders. */
export type Tree = ReadonlyMap<string, string>;

/** A line that says what is wrong and where. */
export type Complaint = string;

/** The rooms of `packages/core/src`; each imports only from those before it, and from itself. */
export const ROOMS: readonly string[] = [
  'version.ts',
  'wants.ts',
  'units.ts',
  'format.ts',
  'finding.ts',
  'kinds.ts',
  'limits.ts',
  'jsonExtent.ts',
  'delimited.ts',
  'text',
  'geodesy',
  'gpx',
  'course',
  'ground',
  'plan',
  'station',
  'raceday',
  'layout',
  'review',
  'analyse.ts',
  'reanalyse.ts',
  'asBuilt.ts',
  'whole.ts',
  'questions.ts',
  'clock.ts',
  'improve',
  'export',
  'papers',
];
/**
 * The rooms of `packages/viewer/src`, in the same order: a file is in the room with the longest path that leads to it, so that
 * `map` is what stands in that folder beside its rooms.
 */
export const VIEWER_ROOMS: readonly string[] = [
  'styles',
  'policy.ts',
  'trouble.ts',
  'words.ts',
  'placedWords.ts',
  'state/store',
  'state/view',
  'state/open',
  'state/edits',
  'state/trial',
  'work',
  'storage',
  'offline',
  'papers',
  'map/palette.ts',
  'map/layers',
  'map/scene.ts',
  'map/underlay.ts',
  'map/style',
  'map/gestures',
  'map',
  'panels/ui',
  'strip',
  'panels/background',
  'panels/place',
  'panels/placed',
  'panels/review',
  'panels/improve',
  'panels/variants',
  'panels/station',
  'panels/stations',
  'panels/plan',
  'panels/day',
  'panels/papers',
  'panels/road',
  'panels/files',
  'panels/start',
  'panels/page',
  'assets.d.ts',
  'main.tsx',
];
/** Only outsiders import these. */
export const FACES: readonly string[] = [
  'index.ts',
  'plan.ts',
  'stages.ts',
  'schemas.ts',
  'sentences.ts',
  'quantities.ts',
  'geometry.ts',
  'gpx.ts',
  'geojson.ts',
  'ground.ts',
  'raceday.ts',
  'papers.ts',
];

const CORE = 'packages/core/src/';
const CLI = 'packages/core/cli/';
const VIEWER = 'packages/viewer/';
const VIEWER_SOURCES = `${VIEWER}src/`;

const blank = (found: string): string => found.replaceAll(/[^\n]/g, ' ');

/** A source's text without comments, and with the insides of strings blanked where `strings` says so; lines stay where they are. */
export function codeOf(text: string, strings: 'kept' | 'blanked'): string {
  const token = /\/\/[^\n]*|\/\*[^]*?\*\/|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g;
  return text.replaceAll(token, (found) => {
    if (found.startsWith('/')) return blank(found);
    if (strings === 'kept') return found;
    // What stands in the braces of a template is code.
    const inside = found.startsWith('`')
      ? [...found.matchAll(/\$\{([^}]*)\}/g)].map((match) => match[1]).join(' ; ')
      : '';
    return `${blank(found)} ${inside} `;
  });
}

/** Every module that a source names: import, export from, dynamic import, types too. */
export function importsOf(text: string): string[] {
  const code = codeOf(text, 'kept');
  const statement =
    /(?:^|[;}\n])\s*(?:import|export)\b[^'"`;]*?\bfrom\s*(['"])([^'"\n]+)\1|(?:^|[;}\n])\s*import\s*(['"])([^'"\n]+)\3|\bimport\s*\(\s*(['"])([^'"\n]+)\5/g;
  return [...code.matchAll(statement)].map((match) => match[2] ?? match[4] ?? match[6]!);
}

const isTest = (path: string): boolean =>
  /\.test\.tsx?$/.test(path) || path.startsWith(`${CORE}testing/`) || path === `${VIEWER_SOURCES}testing.ts`;

/** Relative imports of a file as paths of the tree. */
const targetsOf = (path: string, text: string): string[] =>
  importsOf(text)
    .filter((name) => name.startsWith('.'))
    .map((name) => posix.join(posix.dirname(path), name.replace(/\?\w+$/, '')));

const roomOf = (path: string): string => path.slice(CORE.length).split('/', 1)[0]!;

/** Imports against the order of the rooms, of a face, of the command line, or of a test's helpers. */
export function upwardImports(tree: Tree): Complaint[] {
  return [...tree]
    .filter(([path]) => !isTest(path))
    .flatMap(([path, text]) => targetsOf(path, text).flatMap((target) => wrongWay(path, target)));
}

function wrongWay(path: string, target: string): Complaint[] {
  const says = (why: string): Complaint[] => [`${path} imports ${target}: ${why}`];
  if (isTest(target)) return says('only tests import the helpers of tests');
  if (path.startsWith(VIEWER))
    return target.startsWith('packages/core/')
      ? says('the viewer takes core by its package name')
      : wrongWayInViewer(path, target);
  if (target.startsWith(CLI)) return path.startsWith(CLI) ? [] : says('nothing imports the command line');
  if (!target.startsWith(CORE)) return says('it lies outside the package’s sources');
  if (path.startsWith(CLI)) return FACES.includes(roomOf(target)) ? says('nothing of core imports a face') : [];
  const [from, to] = [roomOf(path), roomOf(target)];
  if (FACES.includes(to)) return says('nothing of core imports a face');
  if (!ROOMS.includes(to)) return says(`${to} is no room of the house`);
  if (FACES.includes(from)) return [];
  if (!ROOMS.includes(from)) return says(`${from} is no room of the house`);
  return ROOMS.indexOf(to) > ROOMS.indexOf(from) ? says(`${from} stands before ${to}`) : [];
}

/** The room of a viewer's file: the longest that leads to it. */
export const viewerRoomOf = (path: string): string | undefined => {
  const inside = path.slice(VIEWER_SOURCES.length);
  return VIEWER_ROOMS.filter((room) => inside === room || inside.startsWith(`${room}/`)).toSorted(
    (a, b) => b.length - a.length,
  )[0];
};

function wrongWayInViewer(path: string, target: string): Complaint[] {
  // What lies beside the sources, such as the demo's files, is in no room.
  if (!path.startsWith(VIEWER_SOURCES) || !target.startsWith(VIEWER_SOURCES)) return [];
  const [from, to] = [viewerRoomOf(path), viewerRoomOf(target)];
  const stranger = from === undefined ? path : to === undefined ? target : null;
  if (stranger !== null) return [`${path} imports ${target}: ${stranger} is in no room of the viewer`];
  return VIEWER_ROOMS.indexOf(to!) > VIEWER_ROOMS.indexOf(from!)
    ? [`${path} imports ${target}: ${from} stands before ${to}`]
    : [];
}

/** Files of the viewer that no room has, and rooms that have no file. */
export function strayFiles(tree: Tree): Complaint[] {
  const files = [...tree.keys()].filter((path) => path.startsWith(VIEWER_SOURCES) && !isTest(path));
  const lived = new Set(files.map(viewerRoomOf));
  return [
    ...files.filter((path) => viewerRoomOf(path) === undefined).map((path) => `${path} is in no room of the viewer`),
    ...VIEWER_ROOMS.filter((room) => !lived.has(room)).map((room) => `the room ${room} of the viewer has no file`),
  ];
}

/** One complaint for each circle of files, with the way round it. */
export function circles(tree: Tree): Complaint[] {
  const found: Complaint[] = [];
  const done = new Set<string>();
  const visit = (path: string, way: readonly string[]): void => {
    const at = way.indexOf(path);
    if (at >= 0) found.push([...way.slice(at), path].join(' → '));
    if (at >= 0 || done.has(path)) return;
    for (const target of targetsOf(path, tree.get(path)!)) if (tree.has(target)) visit(target, [...way, path]);
    done.add(path);
  };
  for (const path of tree.keys()) visit(path, []);
  return found;
}

/** What a browser or Node has and a worker elsewhere has not. */
const GLOBALS = [
  'document',
  'window',
  'navigator',
  'localStorage',
  'process',
  'Buffer',
  'require',
  '__dirname',
] as const;

/** Node modules and globals of Node or the browser in core's sources. A name that the file declares itself is its own. */
export function foreignNames(tree: Tree): Complaint[] {
  return [...tree]
    .filter(([path]) => path.startsWith(CORE) && !isTest(path))
    .flatMap(([path, text]) => {
      const modules = importsOf(text)
        .filter((name) => name.startsWith('node:'))
        .map((name) => `${path} imports ${name}`);
      const code = codeOf(text, 'blanked');
      const globals = GLOBALS.filter((name) => uses(code, name) && !declares(code, name)).map(
        (name) => `${path} uses ${name}`,
      );
      return modules.concat(globals);
    });
}

/** Files of the command line, other than the entry, that touch the process: tests run it many times in one thread. */
export function processUses(tree: Tree): Complaint[] {
  return [...tree]
    .filter(([path]) => path.startsWith(CLI) && path !== `${CLI}main.ts` && !isTest(path))
    .filter(([, text]) => uses(codeOf(text, 'blanked'), 'process') || importsOf(text).includes('node:process'))
    .map(([path]) => `${path} touches the process: take it from Io`);
}

/** As a value: not as a property, nor as a key. */
const uses = (code: string, name: string): boolean =>
  new RegExp(`(?<![.\\w$])${name}(?![\\w$]|\\??\\s*:)`).test(code) ||
  new RegExp(`globalThis\\s*\\.\\s*${name}\\b`).test(code);

/** By const, let or function, or as a parameter. */
const declares = (code: string, name: string): boolean =>
  new RegExp(`\\b(?:const|let|function)\\s+${name}\\b|[(,]\\s*${name}\\??\\s*:`).test(code);

/** Packages that a shipped source names and that `dependencies` does not; types may come from `@types/`. */
export function undeclaredPackages(tree: Tree, dependencies: readonly string[]): Complaint[] {
  return [...tree]
    .filter(([path]) => !isTest(path))
    .flatMap(([path, text]) =>
      importsOf(text)
        .filter((name) => !name.startsWith('.') && !name.startsWith('node:'))
        .map((name) =>
          name
            .split('/')
            .slice(0, name.startsWith('@') ? 2 : 1)
            .join('/'),
        )
        .filter((name) => !dependencies.includes(name) && !dependencies.includes(`@types/${name}`))
        .map((name) => `${path} imports ${name}, which is no dependency`),
    );
}

/** Sources that are not tests and have grown too long; lines of comment, such as the examples of what is exported, do not count. */
export const longFiles = (tree: Tree, most: number): Complaint[] =>
  [...tree]
    .filter(([path]) => !isTest(path))
    .flatMap(([path, text]) => {
      const lines = text.split('\n').filter((line) => !/^\s*(?:\/\*|\*|\/\/|$)/u.test(line)).length;
      return lines > most ? [`${path} has ${lines} lines of code; at most ${most}`] : [];
    });

/** Tests that are left out, or that leave all others out. */
export const silencedTests = (tree: Tree): Complaint[] =>
  [...tree].flatMap(([path, text]) =>
    [
      ...codeOf(text, 'kept').matchAll(
        /\b(?:it|test|describe|bench)(?:\.concurrent)?\.(?:only|skip|skipIf|runIf|todo|fails)\b|\bx(?:it|describe|test)\(/g,
      ),
    ].map((match) => `${path} has ${match[0]}`),
  );

/** Hosts of package registries, folders of somebody's machine. */
export const machineTraces = (tree: Tree): Complaint[] =>
  [...tree].flatMap(([path, text]) =>
    [
      ...text.matchAll(
        /\bhttps?:\/\/[^\s/'"]*(?:registry|npmjs|npmmirror|artifactory|jfrog|nexus)[^\s/'"]*|\bregistry\s*=\s*\S+|(?<=^|[\s'"`(=:,])(?:\/(?:work|home|Users|root|tmp|private|mnt)\/[\w.-]+|[A-Z]:\\Users\\\w+)/gm,
      ),
    ].map((match) => `${path} has ${match[0]}`),
  );
