/** Proves that the manifest and the files of the packed core hold together: publint, attw, and no script at install. */
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, proven, readJson, said, tool } from './project.mjs';
import { packagesIn } from './packages.mjs';

const AT_INSTALL = ['preinstall', 'install', 'postinstall'];

export function provePackage({ folder, tarball, core }) {
  const lint = said(process.execPath, [tool('publint/src/cli.js'), 'run', tarball, '--strict'], folder);
  expect(lint.includes('All good!'), `publint says\n${lint}`);
  proven('publint --strict', 'nothing found');
  const types = said(
    process.execPath,
    [tool('@arethetypeswrong/cli/dist/index.js'), tarball, '--profile', 'esm-only', '--no-color', '--no-emoji'],
    folder,
  );
  const entries = Object.keys(readJson(join(core, 'package.json')).exports).map(
    (entry) => `"@halfcup/core${entry.slice(1)}"`,
  );
  expect(
    entries.every((entry) => types.includes(entry)),
    `attw has not looked at each of ${entries.join(', ')}:\n${types}`,
  );
  proven('attw --profile esm-only', `nothing found in ${entries.length} entry points`);
  const maps = readdirSync(core, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.d.ts.map'));
  const lost = maps.filter((name) => {
    const { sourceRoot, sources } = readJson(join(core, name));
    return sources.some((source) => !existsSync(join(core, dirname(name), sourceRoot ?? '', source)));
  });
  expect(
    maps.length > 100 && lost.length === 0,
    `of ${maps.length} maps of types these lead nowhere: ${lost.join(', ')}`,
  );
  proven('every map of types leads to its source in the package', `${maps.length} maps`);
  const installed = packagesIn(folder);
  expect(
    installed.some(({ path }) => path === core),
    'core is not among the installed packages',
  );
  const scripted = installed.filter(({ scripts }) => AT_INSTALL.some((name) => name in scripts));
  expect(
    scripted.length === 0,
    `these packages run a script when they are installed: ${scripted.map(({ name }) => name).join(', ')}`,
  );
  proven('no dependency has an install script', `${installed.length} packages looked at`);
}
