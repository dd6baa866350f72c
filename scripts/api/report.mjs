/**
 * Holds the public face against its report, one text a face in packages/core/api: `node scripts/api/report.mjs`. Ends with 1 and
 * shows the difference where a signature changed and the report did not; `UPDATE=1` writes the reports, which CI must not.
 * A type that a signature names is in the report of the face that exports it; `pages.mjs` fails where none does.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { Extractor, ExtractorConfig } from '@microsoft/api-extractor';
import { CORE, ROOT, facesOf } from './faces.mjs';

const { values } = parseArgs({ options: { package: { type: 'string', default: CORE } } });
const folder = join(values.package, 'api');

const compilerOptions = {
  target: 'ES2023',
  lib: ['ES2023'],
  module: 'NodeNext',
  moduleResolution: 'NodeNext',
  types: [],
  strict: true,
  exactOptionalPropertyTypes: true,
  skipLibCheck: true,
};

/** The report of one face, from its built types. */
function reportOf({ name, types }, temporary) {
  const configObject = {
    projectFolder: values.package,
    mainEntryPointFilePath: types,
    newlineKind: 'lf',
    compiler: { overrideTsconfig: { compilerOptions, files: [types] } },
    apiReport: {
      enabled: true,
      reportFileName: `${name}.api.md`,
      reportFolder: temporary,
      reportTempFolder: join(temporary, 'temp'),
    },
    docModel: { enabled: false },
    dtsRollup: { enabled: false },
    tsdocMetadata: { enabled: false },
    messages: {
      extractorMessageReporting: { default: { logLevel: 'none' } },
      tsdocMessageReporting: { default: { logLevel: 'none' } },
    },
  };
  const config = ExtractorConfig.prepare({
    configObject,
    configObjectFullPath: undefined,
    packageJsonFullPath: join(values.package, 'package.json'),
  });
  const { errorCount } = Extractor.invoke(config, { localBuild: true, messageCallback: quiet });
  if (errorCount > 0) throw new Error(`the types of ${name} cannot be read: ${types}`);
  return bare(readFileSync(join(temporary, `${name}.api.md`), 'utf8'));
}

/** Everything but what stops the work is the pages' to tell. */
function quiet(message) {
  if (message.logLevel !== 'error') message.handled = true;
}

/** Without remarks on doc comments, so that the report changes with signatures only. */
const bare = (report) =>
  report
    .replaceAll(/^ *\/\/ (?:@public.*|\(undocumented\)|\(No @packageDocumentation.*)\n/gm, '')
    .replaceAll(/\n{3,}/g, '\n\n');

/** The difference as a person reads it. */
function differenceOf(kept, made) {
  const { stdout } = spawnSync(
    'git',
    ['diff', '--no-index', '--no-color', '--', existsSync(kept) ? kept : '/dev/null', made],
    { encoding: 'utf8' },
  );
  return stdout
    .split('\n')
    .filter((line) => !/^(?:diff|index|---|\+\+\+|new file)/.test(line))
    .join('\n');
}

function compile() {
  const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
  const { status } = spawnSync(process.execPath, [tsc, '-b', values.package], { stdio: 'inherit' });
  if (status !== 0) throw new Error(`${values.package} does not compile`);
}

function run() {
  const updating = process.env.UPDATE === '1';
  if (updating && process.env.CI)
    throw new Error(
      'UPDATE=1 writes the report anew, which CI must not: it would check nothing. Update on your own machine and look at the difference.',
    );
  compile();
  const temporary = mkdtempSync(join(tmpdir(), 'halfcup-api-'));
  try {
    const reports = new Map(facesOf(values.package).map((face) => [`${face.name}.api.md`, reportOf(face, temporary)]));
    mkdirSync(folder, { recursive: true });
    const stray = readdirSync(folder).filter((name) => !reports.has(name));
    const changed = [...reports].filter(
      ([name, report]) => !existsSync(join(folder, name)) || readFileSync(join(folder, name), 'utf8') !== report,
    );
    if (updating) {
      for (const [name, report] of changed) writeFileSync(join(folder, name), report);
      for (const name of stray) rmSync(join(folder, name));
      console.log(`API report: ${changed.length} of ${reports.size} written`);
      return;
    }
    for (const [name, report] of changed) {
      writeFileSync(join(temporary, name), report);
      console.error(
        `${relative(ROOT, join(folder, name))} does not tell of the face as it is:\n${differenceOf(join(folder, name), join(temporary, name))}`,
      );
    }
    for (const name of stray) console.error(`${relative(ROOT, join(folder, name))} tells of no face`);
    if (changed.length + stray.length > 0)
      throw new Error(
        'The public face changed. Where that is meant, run `UPDATE=1 node scripts/api/report.mjs` and commit the report: a reviewer sees the change there.',
      );
    console.log(`API report: ${reports.size} faces as reported`);
  } finally {
    rmSync(temporary, { recursive: true, force: true });
  }
}

try {
  run();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
