/**
 * Writes the API pages of all faces into scripts/api/dist: `node scripts/api/pages.mjs`. Ends with 1 where an export has
 * no doc comment, a {@link} leads nowhere, a type that a signature names is exported by no face, or typedoc warns of anything else.
 * `--package FOLDER --tsconfig FILE --out FOLDER` take another package.
 */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { Application } from 'typedoc';
import { CORE, facesOf } from './faces.mjs';

const here = import.meta.dirname;
const { values } = parseArgs({
  options: {
    package: { type: 'string', default: CORE },
    tsconfig: { type: 'string', default: join(here, 'tsconfig.json') },
    out: { type: 'string', default: join(here, 'dist') },
  },
});

const front = join(CORE, 'README.md');
const caution = /## Caution\n\n(.+)\n/.exec(readFileSync(front, 'utf8'))[1];

const app = await Application.bootstrap({
  entryPoints: facesOf(values.package).map(({ source }) => source),
  sortEntryPoints: false,
  tsconfig: values.tsconfig,
  basePath: values.package,
  name: 'Halfcup',
  includeVersion: true,
  readme: front,
  customFooterHtml: caution,
  // Links to sources would lead to a host that the pages know nothing of.
  disableSources: true,
  navigation: { includeFolders: false },
  kindSortOrder: ['Module', 'Function', 'Variable', 'Interface', 'TypeAlias'],
  groupOrder: ['Modules', 'Functions', 'Variables', 'Interfaces', 'Type Aliases'],
  validation: {
    notExported: true,
    invalidLink: true,
    invalidPath: true,
    rewrittenLink: true,
    notDocumented: true,
    unusedMergeModuleWith: true,
  },
  requiredToBeDocumented: ['Module', 'Enum', 'Variable', 'Function', 'Class', 'Interface', 'TypeAlias'],
  treatWarningsAsErrors: true,
});

const project = await app.convert();
if (project !== undefined) {
  app.validate(project);
  await app.generateDocs(project, values.out);
}
if (project === undefined || app.logger.hasErrors() || app.logger.hasWarnings()) {
  console.error(
    'The API pages have faults: each export needs a doc comment of a sentence, each link an end, each type in a signature a face.',
  );
  process.exitCode = 1;
} else console.log(`API pages: ${relative('', join(values.out, 'index.html'))}`);
