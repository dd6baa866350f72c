/** The scripts that watch over the public face, tried on an invented package: what is wrong fails, and says what. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { ROOT } from './support/build.ts';

const folder = mkdtempSync(join(tmpdir(), 'halfcup-face-'));
const report = join(folder, 'api/index.api.md');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const HEAD = '/**\n * The face `buoys`.\n * @module buoys\n */\n';
const BUOY = '/** A buoy. */\nexport interface Buoy {\n  readonly depth: number;\n}\n';
const DEPTH = '/** Depth of a {@link Buoy}, metres. */\nexport const depthOf = (buoy: Buoy): number => buoy.depth;\n';

/** Writes the one source of the package. */
const source = (text: string): void => writeFileSync(join(folder, 'src/index.ts'), text);

function run(
  script: string,
  env: Readonly<Record<string, string>> = {},
  ...args: readonly string[]
): { readonly status: number | null; readonly said: string } {
  const { CI: _, UPDATE: __, ...rest } = process.env;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, 'scripts/api', script), '--package', folder, ...args],
    { encoding: 'utf8', env: { ...rest, NO_COLOR: '1', ...env } },
  );
  return { status, said: stdout + stderr };
}

beforeEach(() => {
  mkdirSync(join(folder, 'src'), { recursive: true });
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({
      name: 'buoys',
      version: '1.0.0',
      type: 'module',
      exports: {
        '.': { '@halfcup/source': './src/index.ts', types: './dist/index.d.ts' },
        './package.json': './package.json',
      },
    }),
  );
  const compilerOptions = {
    composite: true,
    rootDir: 'src',
    outDir: 'dist',
    strict: true,
    target: 'ES2023',
    lib: ['ES2023'],
    module: 'NodeNext',
    types: [],
  };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, include: ['src'] }));
  source(HEAD + BUOY + DEPTH);
});

describe('the API report', () => {
  it('is written where that is asked, and holds as long as signatures stay, whatever is said of them', () => {
    expect(run('report.mjs', { UPDATE: '1' })).toMatchObject({ status: 0 });
    expect(readFileSync(report, 'utf8')).toContain('export const depthOf: (buoy: Buoy) => number;');
    source(HEAD + BUOY.replace('A buoy.', 'A float on a chain.') + DEPTH.replace('buoy.depth', '-(-buoy.depth)'));
    expect(run('report.mjs')).toMatchObject({ status: 0 });
  });

  it('fails with the difference where a signature changed, and changes nothing', () => {
    const before = readFileSync(report, 'utf8');
    source(
      HEAD +
        BUOY +
        DEPTH.replace('=> buoy.depth', '=> 2 * buoy.depth')
          .replace('(buoy: Buoy)', '(buoy: Buoy | null)')
          .replace('2 * buoy', '2 * buoy!'),
    );
    const { status, said } = run('report.mjs');
    expect(status).toBe(1);
    expect(said).toContain(
      '-export const depthOf: (buoy: Buoy) => number;\n+export const depthOf: (buoy: Buoy | null) => number;',
    );
    expect(readFileSync(report, 'utf8')).toBe(before);
  });

  it('fails where a report tells of no face', () => {
    writeFileSync(join(folder, 'api/gone.api.md'), '');
    const { status, said } = run('report.mjs');
    expect({ status, said }).toMatchObject({
      status: 1,
      said: expect.stringContaining('gone.api.md tells of no face') as string,
    });
    expect(run('report.mjs', { UPDATE: '1' }).status).toBe(0);
    expect(readdirSync(join(folder, 'api'))).toEqual(['index.api.md']);
  });

  it('is never written by CI', () => {
    const { status, said } = run('report.mjs', { UPDATE: '1', CI: 'true' });
    expect({ status, said }).toMatchObject({ status: 1, said: expect.stringContaining('CI must not') as string });
  });
});

describe('the API pages', () => {
  const pages = (): ReturnType<typeof run> =>
    run('pages.mjs', {}, '--tsconfig', join(folder, 'tsconfig.json'), '--out', join(folder, 'pages'));

  it('tell of every export, and bring the caution', () => {
    expect(pages()).toMatchObject({ status: 0 });
    const written = readdirSync(join(folder, 'pages'), { recursive: true, encoding: 'utf8' });
    const page = readFileSync(
      join(
        folder,
        'pages',
        written.find((file) => file.endsWith('depthOf.html'))!,
      ),
      'utf8',
    );
    expect(page).toContain('Halfcup');
    expect(page).toContain('the road authority');
  });

  it('fail on an export that nobody documented, a link that leads nowhere and a type that no face exports', () => {
    source(
      HEAD +
        BUOY.replace('export ', '').replace('/** A buoy. */\n', '') +
        DEPTH.replace('{@link Buoy}', '{@link Boy}') +
        'export const LIMIT: number = 4;\n',
    );
    const { status, said } = pages();
    expect(status).toBe(1);
    for (const fault of [
      /LIMIT .*does not have any documentation/u,
      /link to "Boy"/u,
      /Buoy, .* is referenced by .* but not included/u,
    ])
      expect(said).toMatch(fault);
  });
});
