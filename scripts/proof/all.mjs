/** All proofs of this folder in one installed project: `node scripts/proof/all.mjs`. Ends with 1 at the first that fails. */
import { proveDependencies } from './dependencies.mjs';
import { proveImportTimes } from './importTimes.mjs';
import { proveInstall } from './install.mjs';
import { inProject } from './project.mjs';
import { proveSizes } from './sizes.mjs';

await inProject(async (project) => {
  await proveInstall(project);
  proveDependencies(project);
  await proveSizes(project);
  proveImportTimes(project);
});
