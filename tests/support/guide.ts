/** Holds a guide for contributors against the folders that it describes. Works on texts, so that it can be tried on an invented guide. */
import type { Complaint } from './house.ts';

/** What a guide is held against. */
export interface Building {
  /** Every file and folder from the root of the repository, `/` between folders. */
  readonly paths: ReadonlySet<string>;
  /** Rooms of core in the order of imports; a file ends in `.ts`. */
  readonly rooms: readonly string[];
  /** Names of the scripts of the root's package.json. */
  readonly scripts: readonly string[];
  /** Folders whose own folders must each be named. */
  readonly described: readonly string[];
}

/** Where a path of the guide may begin. */
const ROOTS = [
  '',
  'packages/core/src/',
  'packages/viewer/src/',
  'packages/core/src/export/',
  'packages/core/src/review/',
  'packages/viewer/src/map/',
  'packages/viewer/src/panels/',
];

const fenced = (guide: string, language: string): readonly string[] =>
  [...guide.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gmu'))].map(([, inside]) => inside!);
const quoted = (guide: string): readonly string[] =>
  [...guide.replaceAll(/^```[^]*?^```$/gmu, '').matchAll(/`([^`\n]+)`/gu)].map(([, inside]) => inside!);

/** Looks like a path of this repository: it has a folder or the ending of a source, and nothing that a command or a pattern has. */
const isPath = (text: string): boolean =>
  /^[\w.-]+(?:\/[\w.-]+)*\/?$/u.test(text) && /\/|\.(?:tsx?|mjs|json|md|ya?ml)$/u.test(text);

/** Paths that the guide names and that are not there. */
export const missingPaths = (guide: string, { paths }: Building): readonly Complaint[] =>
  [...new Set(quoted(guide).filter(isPath))]
    .map((path) => path.replace(/\/$/u, ''))
    .filter((path) => !ROOTS.some((root) => paths.has(root + path)))
    .map((path) => `the guide names ${path}, which is not there`);

/** Names that the guide says are in a file, as "`name` (`file`", and that are not; `textOf` reads a path of the repository. */
export const misplacedNames = (
  guide: string,
  { paths }: Building,
  textOf: (path: string) => string,
): readonly Complaint[] =>
  [...guide.matchAll(/`(\w+)` \(`([\w./-]+\.tsx?)`/gu)].flatMap(([, name, file]) => {
    const path = ROOTS.map((root) => root + file).find((one) => paths.has(one));
    return path !== undefined && new RegExp(`\\b${name}\\b`, 'u').test(textOf(path))
      ? []
      : [`the guide says that ${name} is in ${file}, which has no such name`];
  });

/** Folders that are there and that no path of the guide names. */
export function untoldFolders(guide: string, { paths, described }: Building): readonly Complaint[] {
  const told = quoted(guide).map((text) => text.replace(/\/$/u, ''));
  const names = new Set(told.flatMap((text) => ROOTS.map((root) => root + text)));
  const folders = [...paths].filter(
    (path) =>
      described.includes(path.slice(0, Math.max(path.lastIndexOf('/'), 0))) &&
      [...paths].some((other) => other.startsWith(`${path}/`)),
  );
  return folders.filter((folder) => !names.has(folder)).map((folder) => `the guide does not name ${folder}/`);
}

/** The drawing of the flow: every room of core once or more, first named in the order of imports, and no other folder. */
export function flowFaults(guide: string, { rooms }: Building): readonly Complaint[] {
  const [drawing] = fenced(guide, '');
  if (drawing === undefined) return ['the guide draws no flow'];
  const named = [
    ...new Set(
      [...drawing.matchAll(/(?<![\w/])([a-z][A-Za-z]*(?:\/|\.ts))(?![\w/])/gu)].map(([, name]) =>
        name!.replace('/', ''),
      ),
    ),
  ];
  const strangers = named
    .filter((name) => !rooms.includes(name))
    .map((name) => `the flow draws ${name}, which is no room of core`);
  const left = rooms.filter((room) => !named.includes(room)).map((room) => `the flow does not draw ${room}`);
  const order = named.filter((name) => rooms.includes(name));
  const turned = order.flatMap((name, k) =>
    k > 0 && rooms.indexOf(name) < rooms.indexOf(order[k - 1]!)
      ? [`the flow draws ${name} after ${order[k - 1]}, which imports it`]
      : [],
  );
  return [...strangers, ...left, ...turned];
}

/** The table of the viewer's rooms: its first column names each of them once, in the order of imports, and nothing else. */
export function tableFaults(
  guide: string,
  rooms: readonly string[],
  ignored: readonly string[] = [],
): readonly Complaint[] {
  const [, table] = /^\| room of `packages\/viewer\/src\/`.*\n((?:\|.*\n)+)/mu.exec(guide) ?? [];
  if (table === undefined) return ['the guide has no table of the viewer’s rooms'];
  const named = table
    .split('\n')
    .flatMap((row) =>
      [...(row.split('|')[1] ?? '').matchAll(/`([^`]+)`/gu)].map(([, name]) => name!.replace(/\/$/u, '')),
    );
  const wanted = rooms.filter((room) => !ignored.includes(room));
  const known = named.filter((name) => wanted.includes(name));
  return [
    ...named
      .filter((name) => !wanted.includes(name))
      .map((name) => `the table has ${name}, which is no room of the viewer`),
    ...wanted.filter((room) => !named.includes(room)).map((room) => `the table does not have ${room}`),
    ...known.flatMap((name, k) =>
      k > 0 && rooms.indexOf(name) < rooms.indexOf(known[k - 1]!)
        ? [`the table has ${name} after ${known[k - 1]}, which may import it`]
        : [],
    ),
  ];
}

/** Commands of the guide whose script or file is not there. */
export const brokenCommands = (guide: string, { paths, scripts }: Building): readonly Complaint[] =>
  fenced(guide, 'sh').flatMap((block) => {
    const run = [...block.matchAll(/pnpm@12 (?:run )?([a-z][\w:-]*)/gu)]
      .map(([, name]) => name!)
      .filter((name) => !['install', 'exec', ...scripts].includes(name));
    const files = [...block.matchAll(/(?:node|bash)(?: --[\w-]+)* ([\w./-]+)/gu)]
      .map(([, file]) => file!)
      .filter((file) => !paths.has(file));
    return [
      ...run.map((name) => `the guide runs the script ${name}, which is not there`),
      ...files.map((file) => `the guide runs ${file}, which is not there`),
    ];
  });
