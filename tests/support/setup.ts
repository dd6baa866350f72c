/** Builds the command line once for all files of a run that may start it as a process. */
import { buildCommandLine } from './build.ts';

export default buildCommandLine;
