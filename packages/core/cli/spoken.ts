/** What is said on stderr: a line for each problem, and the words for a fault of the program itself. */
import { type Finding, findingLine } from '../src/finding.ts';

/** A problem of a file by its place in it, one of the call by the program's name. */
export const spoken = (finding: Finding): string =>
  finding.where.file === undefined ? `halfcup: ${finding.message}` : findingLine(finding);

/** A line that is said beside a command's output, with how grave it is. */
export const noteLine = (note: Finding): string =>
  `${spoken({ ...note, message: `${note.severity}: ${note.message}` })}\n`;

/** What was thrown where nothing should have been; nobody else can mend it, save that memory can be had. */
export function faultText(error: unknown, innocent: 'files' | 'plan'): string {
  const reason = error instanceof Error ? error.message : String(error);
  const short = error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
  const mend = short
    ? 'let Node take more (NODE_OPTIONS=--max-old-space-size=8192, in MB), or report it'
    : 'please report it';
  return `this is a fault of Halfcup, not of your ${innocent} (${reason.split('\n')[0]}); ${mend} with the command that you gave.`;
}
