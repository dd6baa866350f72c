/** The order of the house: who may import whom, and what no file may hold. The finder is tried on invented trees first. */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  FACES,
  ROOMS,
  type Tree,
  circles,
  codeOf,
  foreignNames,
  importsOf,
  longFiles,
  machineTraces,
  processUses,
  silencedTests,
  strayFiles,
  undeclaredPackages,
  upwardImports,
  VIEWER_ROOMS,
} from './support/house.ts';
import { functionsOf, longFunctions } from './support/functions.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** What `.gitignore` leaves out, and the history itself. */
const LEFT_OUT = new Set([
  ...readFileSync(join(ROOT, '.gitignore'), 'utf8')
    .split('\n')
    .map((line) => line.replace(/\/$/, '').trim()),
  '.git',
]);

/** All files below a folder that are not left out, as texts. */
function treeOf(folder: string, wanted: (path: string) => boolean): Tree {
  const tree = new Map<string, string>();
  const walk = (path: string): void => {
    for (const name of readdirSync(join(ROOT, path))) {
      const inside = path === '' ? name : `${path}/${name}`;
      if (LEFT_OUT.has(name) || name.endsWith('.tsbuildinfo')) continue;
      if (statSync(join(ROOT, inside)).isDirectory()) walk(inside);
      else if (wanted(inside)) tree.set(inside, readFileSync(join(ROOT, inside), 'utf8'));
    }
  };
  walk(folder);
  return tree;
}

const isSource = (path: string): boolean => /\.tsx?$/.test(path);
const sources: Tree = new Map(
  ['packages/core/src', 'packages/core/cli', 'packages/viewer/src'].flatMap((folder) =>
    Array.from(treeOf(folder, isSource)),
  ),
);
const invented = (files: Readonly<Record<string, string>>): Tree => new Map(Object.entries(files));

describe('the finder', () => {
  it('reads every way of naming a module, and none in a comment or a text', () => {
    const text = [
      "import a, { b } from './a.ts';",
      "import type { C } from './c.ts';",
      "import './d.css';",
      "export { e } from './e.ts';",
      "export * from './f.ts';",
      'import {\n  g,\n  h,\n} from "./g.ts";',
      "const i = await import('./i.ts');",
      "// import x from './x.ts';",
      "/* export * from './y.ts' */",
      "const from = 'import z from ./z.ts';",
    ].join('\n');
    expect(importsOf(text)).toEqual(['./a.ts', './c.ts', './d.css', './e.ts', './f.ts', './g.ts', './i.ts']);
  });

  it('finds an import that goes up, of a face, of the command line, of a test helper, and a folder that is no room', () => {
    const tree = invented({
      'packages/core/src/course/a.ts': "import { x } from '../layout/b.ts';",
      'packages/core/src/layout/b.ts': "import { y } from '../course/c.ts';\nimport type { f } from '../index.ts';",
      'packages/core/src/course/c.ts': "import '../geodesy/d.ts';\nimport './e.ts';",
      'packages/core/src/units.ts': "export type { F } from './finding.ts';",
      'packages/core/src/gpx/g.ts': "import { f } from '../gpx.ts';",
      'packages/core/src/export/h.ts': "import { run } from '../../cli/main.ts';\nimport '../testing/courses.ts';",
      'packages/core/src/misc/i.ts': "import '../units.ts';",
      'packages/core/src/geometry.ts': "export * from './layout/b.ts';\nexport * from './index.ts';",
      'packages/core/cli/main.ts': "import '../src/export/h.ts';\nimport './table.ts';\nimport '../src/index.ts';",
      'packages/viewer/src/j.ts': "import '@halfcup/core';\nimport '../../core/src/units.ts';",
      'packages/core/src/course/c.test.ts': "import '../analyse.ts';\nimport '../testing/courses.ts';",
    });
    expect(upwardImports(tree).map((complaint) => complaint.replaceAll('packages/core/src/', ''))).toEqual([
      'course/a.ts imports layout/b.ts: course stands before layout',
      'layout/b.ts imports index.ts: nothing of core imports a face',
      'units.ts imports finding.ts: units.ts stands before finding.ts',
      'gpx/g.ts imports gpx.ts: nothing of core imports a face',
      'export/h.ts imports packages/core/cli/main.ts: nothing imports the command line',
      'export/h.ts imports testing/courses.ts: only tests import the helpers of tests',
      'misc/i.ts imports units.ts: misc is no room of the house',
      'geometry.ts imports index.ts: nothing of core imports a face',
      'packages/core/cli/main.ts imports index.ts: nothing of core imports a face',
      'packages/viewer/src/j.ts imports units.ts: the viewer takes core by its package name',
    ]);
  });

  it('finds an import of the viewer that goes up, between rooms inside a room too, of a test helper, and of a folder that is no room', () => {
    const tree = invented({
      'packages/viewer/src/state/store/a.ts': "import { b } from '../view/b.ts';",
      'packages/viewer/src/state/view/b.ts':
        "import '../store/a.ts';\nimport { w } from '../../words.ts';\nimport './c.ts';",
      'packages/viewer/src/state/edits/c.ts': "const d = await import('../../work/d.ts');",
      'packages/viewer/src/map/style/e.ts': "import type { V } from '../mapView.ts';\nimport '../scene.ts';",
      'packages/viewer/src/map/mapView.ts': "import './style/e.ts';\nimport './scene.ts';\nimport '../strip/f.tsx';",
      'packages/viewer/src/strip/f.tsx': "import '../panels/ui/g.ts';\nimport '../panels/day/h.tsx';",
      'packages/viewer/src/panels/day/h.tsx': "import '../ui/g.ts';\nimport '../attic/i.tsx';",
      'packages/viewer/src/panels/attic/i.tsx': "import '../ui/g.ts';",
      'packages/viewer/src/main.tsx':
        "import './styles/a.css';\nimport '../../../fixtures/demo/plan.json?url';\nimport './testing.ts';",
      'packages/viewer/src/strip/f.test.ts': "import '../panels/day/h.tsx';\nimport '../testing.ts';",
    });
    expect(upwardImports(tree).map((complaint) => complaint.replaceAll('packages/viewer/src/', ''))).toEqual([
      'state/store/a.ts imports state/view/b.ts: state/store stands before state/view',
      'state/edits/c.ts imports work/d.ts: state/edits stands before work',
      'map/style/e.ts imports map/mapView.ts: map/style stands before map',
      'map/mapView.ts imports strip/f.tsx: map stands before strip',
      'strip/f.tsx imports panels/day/h.tsx: strip stands before panels/day',
      'panels/day/h.tsx imports panels/attic/i.tsx: panels/attic/i.tsx is in no room of the viewer',
      'panels/attic/i.tsx imports panels/ui/g.ts: panels/attic/i.tsx is in no room of the viewer',
      'main.tsx imports testing.ts: only tests import the helpers of tests',
    ]);
    const strays = strayFiles(tree).map((complaint) => complaint.replaceAll('packages/viewer/src/', ''));
    expect(strays).toContain('panels/attic/i.tsx is in no room of the viewer');
    expect(strays).toContain('the room storage of the viewer has no file');
    expect(strays).not.toContain('the room map/style of the viewer has no file');
  });

  it('finds circles, long and short, types included, and tells the way round', () => {
    const tree = invented({
      'a/one.ts': "import './two.ts';",
      'a/two.ts': "import type { T } from './three.ts';",
      'a/three.ts': "export * from './one.ts';\nimport './leaf.ts';",
      'a/self.ts': "import './self.ts';",
      'a/leaf.ts': '',
    });
    expect(circles(tree)).toEqual(['a/one.ts → a/two.ts → a/three.ts → a/one.ts', 'a/self.ts → a/self.ts']);
    expect(
      circles(
        invented({
          'a/one.ts': "import './leaf.ts';\nimport './two.ts';",
          'a/two.ts': "import './leaf.ts';",
          'a/leaf.ts': '',
        }),
      ),
    ).toEqual([]);
  });

  it('finds what only Node or a browser has, and not a name that the file declares or a word in a text', () => {
    const tree = invented({
      'packages/core/src/a.ts': "import { readFileSync } from 'node:fs';",
      'packages/core/src/b.ts': 'const width = window.innerWidth;',
      'packages/core/src/c.ts': 'if (typeof process !== undefined) run(`${document.title}`);',
      'packages/core/src/d.ts': 'const it = globalThis.document;',
      'packages/core/src/e.ts':
        "// window\nconst say = 'the document of a process';\nexport const f = (document: Doc): string => document.file + say.window;\nconst g = { process: 1 };",
      'packages/core/cli/f.ts': 'process.exit(1);',
    });
    expect(foreignNames(tree).map((complaint) => complaint.slice('packages/core/src/'.length))).toEqual([
      'a.ts imports node:fs',
      'b.ts uses window',
      'c.ts uses document',
      'c.ts uses process',
      'd.ts uses document',
    ]);
  });

  it('finds what touches the process beside the entry of the command line', () => {
    const tree = invented({
      'packages/core/cli/main.ts': 'process.exitCode = 2;',
      'packages/core/cli/a.ts': 'const here = process.cwd();',
      'packages/core/cli/b.ts': "import { argv } from 'node:process';",
      'packages/core/cli/c.ts': "// the process\nconst word = 'process';",
      'packages/core/cli/d.test.ts': 'process.cwd();',
    });
    expect(processUses(tree)).toEqual([
      'packages/core/cli/a.ts touches the process: take it from Io',
      'packages/core/cli/b.ts touches the process: take it from Io',
    ]);
  });

  it('finds packages that are no dependency', () => {
    const tree = invented({
      'packages/core/src/a.ts':
        "import x from 'flatbush';\nimport '@turf/turf/x';\nimport type { G } from 'geojson';\nimport 'left';",
    });
    expect(undeclaredPackages(tree, ['flatbush', '@turf/turf', '@types/geojson'])).toEqual([
      'packages/core/src/a.ts imports left, which is no dependency',
    ]);
  });

  it('finds long files, silenced tests and traces of a machine', () => {
    const long = {
      'a.ts': 'x\n'.repeat(251),
      'b.ts': `${'x\n'.repeat(250)}\n/** A\n * b\n */\n  // c\n`,
      'a.test.ts': 'x\n'.repeat(999),
    };
    expect(longFiles(invented(long), 250)).toEqual(['a.ts has 251 lines of code; at most 250']);
    const dot = '.';
    expect(
      silencedTests(
        invented({
          'a.test.ts': `it${dot}only('x')\ndescribe${dot}skip('y')\nit('only this')\nit${dot}each([])\n// it${dot}skip`,
        }),
      ),
    ).toEqual([`a.test.ts has it${dot}only`, `a.test.ts has describe${dot}skip`]);
    // Put together here, so that this file has none itself.
    const host = ['https:', '', 'registry.example.org'].join('/');
    const home = ['', 'home', 'somebody'].join('/');
    expect(
      machineTraces(
        invented({ 'a.md': `see ${host}/x and ${home}/x`, 'b.md': 'https://example.org/home/page and either/tmp/or' }),
      ),
    ).toEqual([`a.md has ${host}`, `a.md has ${home}`]);
  });

  it('measures functions by their bodies, those inside included, without comments and blank lines', () => {
    const text = [
      "const say = 'a “{” in a text';",
      'export function outer(a: number): number {',
      '  // A comment.',
      '',
      '  const inner = (b: number): number => {',
      '    /* Another',
      '     } */',
      '    return b;',
      '  };',
      '  return inner(a);',
      '}',
      'const one = (): number => 1;',
      'const record = {',
      '  field: () =>',
      '    [',
      '      1,',
      '    ],',
      '  method(): void {},',
      '};',
      'run(() => {',
      '  one();',
      '});',
      'abstract class Shape {',
      '  abstract area(): number;',
      '}',
    ].join('\n');
    expect(functionsOf('a.ts', text).map(({ name, line, lines }) => `${name} ${line} ${lines}`)).toEqual([
      'outer 2 4',
      'inner 5 1',
      'one 12 1',
      'field 14 3',
      'method 18 0',
      'run 20 1',
    ]);
    expect(() => functionsOf('a.ts', 'function {')).toThrow(/a\.ts cannot be parsed/u);
    expect(
      functionsOf('a.tsx', 'const A = () => (\n  <p>\n    {/* its braces count */}\n    a\n  </p>\n);')[0],
    ).toMatchObject({ name: 'A', lines: 4 });
  });

  it('finds long functions, but for exceptions, and exceptions that are none', () => {
    const of = (lines: number): string => `function f() {\n${'  run();\n'.repeat(lines)}}\n`;
    const tree = invented({ 'a.ts': of(61), 'b.ts': of(60), 'c.ts': of(99), 'c.test.ts': of(99) });
    expect(longFunctions(tree, 60, { 'b.ts: f': 'was long', 'c.ts: f': 'a table' })).toEqual([
      'a.ts:1 f has 61 lines of code; at most 60',
      'b.ts: f is no longer an exception',
    ]);
  });

  it('keeps lines in place where it blanks texts and comments', () => {
    const text = "const a = 'x\\'y'; // b\n/* c\n d */ const e = `f ${g} h`;\n";
    expect(codeOf(text, 'blanked').split('\n')).toHaveLength(text.split('\n').length);
    expect(codeOf(text, 'blanked')).not.toMatch(/[bcdfhxy]\b(?! =)/);
    expect(codeOf(text, 'blanked')).toContain(' g ');
  });
});

describe('the house', () => {
  it('is read: core, the command line and the viewer', () => {
    expect([...sources.keys()].filter((path) => path.startsWith('packages/core/src/')).length).toBeGreaterThan(40);
    for (const folder of ['packages/core/cli/', 'packages/viewer/src/'])
      expect([...sources.keys()].some((path) => path.startsWith(folder))).toBe(true);
    expect(new Set([...ROOMS, ...FACES]).size).toBe(ROOMS.length + FACES.length);
    // No import escapes the finder: there are at least as many as lines that begin and end as one.
    for (const [path, text] of sources) {
      const plain =
        text
          .match(/^(?:import|export) .*'.+';$/gm)
          ?.filter((line) => line.startsWith('import') || line.includes(' from ')) ?? [];
      expect({ path, found: importsOf(text).length >= plain.length }).toEqual({ path, found: true });
    }
  });

  it('has no import that goes up, and none of a face or the command line', () =>
    expect(upwardImports(sources)).toEqual([]));

  it('has a room for every file of the viewer, and a file in every room', () => {
    expect(new Set(VIEWER_ROOMS).size).toBe(VIEWER_ROOMS.length);
    const styles = treeOf('packages/viewer/src/styles', (path) => path.endsWith('.css'));
    expect(strayFiles(new Map([...sources, ...styles]))).toEqual([]);
  });

  it('has no circle of imports', () => expect(circles(sources)).toEqual([]));

  it('keeps core free of Node and the browser', () => {
    expect(foreignNames(sources)).toEqual([]);
    expect(processUses(sources)).toEqual([]);
    // The compiler keeps watch as well: neither the DOM's nor Node's types are there for core's sources.
    const base = readFileSync(join(ROOT, 'tsconfig.base.json'), 'utf8');
    expect(base).toMatch(/"lib": \["ES\d+"\]/);
    expect(base).toMatch(/"types": \[\]/);
    expect(readFileSync(join(ROOT, 'packages/core/tsconfig.json'), 'utf8')).not.toMatch(/"lib"|"types"/);
  });

  it('names only dependencies that its packages declare', () => {
    for (const name of ['core', 'viewer']) {
      const { dependencies } = JSON.parse(readFileSync(join(ROOT, `packages/${name}/package.json`), 'utf8')) as {
        dependencies: Record<string, string>;
      };
      const own = new Map([...sources].filter(([path]) => path.startsWith(`packages/${name}/`)));
      const types = name === 'viewer' ? ['@types/geojson'] : [];
      expect(undeclaredPackages(own, [...Object.keys(dependencies), ...types])).toEqual([]);
    }
  });

  it('has no source of over 300 lines of code', () => expect(longFiles(sources, 300)).toEqual([]));

  it('has no function of over 60 lines of code', () => {
    expect(functionsOf('a.ts', sources.get('packages/core/src/analyse.ts')!).length).toBeGreaterThan(5);
    // `path: name` with why it stays whole.
    expect(longFunctions(sources, 60, {})).toEqual([]);
  });

  it('has no silenced test', () => {
    const tests = new Map(
      ['packages', 'tests'].flatMap((folder) =>
        Array.from(treeOf(folder, (path) => /\.test\.tsx?$/.test(path) || path.startsWith('tests/'))),
      ),
    );
    expect(tests.size).toBeGreaterThan(10);
    expect(silencedTests(tests)).toEqual([]);
  });

  it('has no registry’s host and no path of a machine in any text', () => {
    const texts = treeOf('', (path) =>
      /\.(?:[cm]?[jt]sx?|json|jsonc|ya?ml|md|html|css|svg|txt|gpx|geojson|csv|npmrc)$|(?:^|\/)(?:LICENSE|\.ci\/\w+)$|\.gitignore$/.test(
        path,
      ),
    );
    expect(texts.size).toBeGreaterThan(100);
    expect(machineTraces(texts)).toEqual([]);
  });
});
