/** What lies in an installed project, package by package. */
import { existsSync, lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readJson } from './project.mjs';

const namesIn = (modules) =>
  readdirSync(modules)
    .filter((name) => !name.startsWith('.'))
    .flatMap((name) =>
      name.startsWith('@') ? readdirSync(join(modules, name)).map((inner) => `${name}/${inner}`) : [name],
    );

/** Bytes of a package's own files, those of packages inside it left out. */
function bytesIn(folder) {
  return readdirSync(folder, { withFileTypes: true }).reduce((sum, entry) => {
    if (entry.name === 'node_modules') return sum;
    const path = join(folder, entry.name);
    return sum + (entry.isDirectory() ? bytesIn(path) : lstatSync(path).size);
  }, 0);
}

function packageAt(path) {
  const {
    name,
    version,
    license,
    licenses,
    scripts = {},
    dependencies = {},
    optionalDependencies = {},
  } = readJson(join(path, 'package.json'));
  const built = existsSync(join(path, 'binding.gyp'));
  return {
    name,
    version,
    path,
    license: license?.type ?? license ?? licenses?.[0]?.type,
    scripts: built ? { install: 'node-gyp rebuild', ...scripts } : scripts,
    dependencies: [...new Set([...Object.keys(dependencies), ...Object.keys(optionalDependencies)])],
    bytes: bytesIn(path),
  };
}

/** Every package under a folder's node_modules, at whatever depth. */
export function packagesIn(folder) {
  const modules = join(folder, 'node_modules');
  if (!existsSync(modules)) return [];
  return namesIn(modules).flatMap((name) => {
    const path = join(modules, name);
    return [packageAt(path), ...packagesIn(path)];
  });
}
