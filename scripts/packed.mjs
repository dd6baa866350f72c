/**
 * Writes packages/core/dist/packed, the files of core that are published, from the sources alone (core's `prepack`).
 * One file a source, so that a bundler drops what a page does not use; only the modules behind the face ./geometry
 * are gathered, the geometry into one and the words it speaks into another: Node takes longer to find and open
 * twenty files than to run what is in them. The same sources give the same bytes.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const CORE = join(ROOT, 'packages/core');
const PACKED = join(CORE, 'dist/packed');
const FACE = join(PACKED, 'src/geometry.js');
/** Karney's own code is CommonJS, which takes Node longer to open than all the rest: it is taken in too, with its licence. */
const GEODESIC = 'geographiclib-geodesic';
const GEODESIC_FILE = createRequire(join(CORE, 'package.json')).resolve(GEODESIC);
const rooms = (...names) => new Set(names.map((room) => join(PACKED, 'src', room)));
/**
 * Of what the face loads, by the file it is gathered into; a later one may import an earlier one. Words are apart
 * since help and a reader of GPX need them without the geometry.
 */
const GATHERED = [
  { into: join(PACKED, 'src/words.js'), rooms: rooms('.', 'text', 'text/en', 'text/en/findings', 'gpx') },
  { into: join(PACKED, 'src/gathered.js'), rooms: rooms('geodesy', 'course', 'layout') },
];
/** As the compiler writes them: the path of a file beside this one, between its quotes. */
const BESIDE = /(?<=^(?:import|export) (?:[^;']*? from )?')\.{1,2}\/[^']+(?=';$)/gmu;

/** The same wherever it stands, in `import()` and `new URL()` too. */
const ANY_BESIDE = /(?:from |import |import\(|new URL\()["'](\.{1,2}\/[^"']+\.js)["']/gu;

function compile() {
  const { status } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', join(CORE, 'tsconfig.packed.json')],
    { stdio: 'inherit' },
  );
  if (status !== 0) throw new Error('core does not compile');
}

/** A file and all that it imports, directly or not. */
function behind(file, seen = new Set()) {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const [path] of readFileSync(file, 'utf8').matchAll(BESIDE)) behind(resolve(dirname(file), path), seen);
  return seen;
}

const pathFrom = (file, to) => {
  const path = relative(dirname(file), to);
  return path.startsWith('.') ? path : `./${path}`;
};

const licence = (text) =>
  text.includes(GEODESIC)
    ? `/* With ${GEODESIC} in it, whose licence is:\n\n${readFileSync(join(GEODESIC_FILE, '../LICENSE.txt'), 'utf8')}*/`
    : '';

/** Makes one module of several and leaves it in the place given. */
async function gather(into, files) {
  writeFileSync(into, files.map((file) => `export * from '${pathFrom(into, file)}';\n`).join(''));
  const taken = new Set([into, GEODESIC_FILE, ...files]);
  const own = files.map((file) => readFileSync(file, 'utf8')).join('');
  await build({
    root: PACKED,
    configFile: false,
    logLevel: 'warn',
    resolve: { alias: { [GEODESIC]: GEODESIC_FILE } },
    build: {
      lib: { entry: into, formats: ['es'], fileName: basename(into, '.js') },
      outDir: dirname(into),
      emptyOutDir: false,
      minify: false,
      target: 'es2023',
      rolldownOptions: {
        external: (id) => (isAbsolute(id) ? !taken.has(id) : !id.startsWith('.') && id !== GEODESIC),
        treeshake: false,
        output: { banner: licence(own) },
      },
    },
  });
  for (const file of files) rmSync(file);
}

/** Points every import of a gathered file at what it was gathered into; throws where a file would be missed. */
function point(into, files) {
  for (const name of readdirSync(PACKED, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.js'),
  )) {
    const file = join(PACKED, name);
    const text = readFileSync(file, 'utf8');
    const pointed = text.replaceAll(BESIDE, (path) =>
      files.includes(resolve(dirname(file), path)) ? pathFrom(file, into) : path,
    );
    if (pointed !== text) writeFileSync(file, pointed);
    for (const [, path] of pointed.matchAll(ANY_BESIDE)) {
      if (!existsSync(resolve(dirname(file), path)))
        throw new Error(`${name} imports "${path}", which is not in dist/packed`);
    }
  }
}

rmSync(PACKED, { recursive: true, force: true });
compile();
// The bundler writes paths from here into its comments.
process.chdir(PACKED);
for (const { into, rooms } of GATHERED) {
  const loaded = [...behind(FACE)].filter((file) => file !== FACE && !GATHERED.some((one) => one.into === file));
  const files = loaded.filter((file) => rooms.has(dirname(file)));
  const round = new Set(
    loaded.filter((file) => !files.includes(file) && [...behind(file)].some((one) => files.includes(one))),
  );
  const own = files.filter((file) => [...behind(file)].some((one) => round.has(one)));
  if (own.length > 0)
    throw new Error(
      `${own.join(', ')} would import what imports it; only what the geometry needs from rooms before it can stay apart`,
    );
  await gather(into, files);
  point(into, files);
}
