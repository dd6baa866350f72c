/** What is printed on stderr: a line for each problem, as compilers print it, and the words for a fault of the program itself. */
import { type Finding, findingLine } from '../src/finding.ts';
import type { Screen } from './screen.ts';

/** `plan.json:12:7: error: what is the matter`; a problem of the call has the program's name in front. */
export function problemLine({ where, severity, message, code }: Finding, { paint }: Screen): string {
  const text = `${paint(severity, `${severity}:`)} ${message}`;
  return where.file === undefined ? `halfcup: ${text}` : findingLine({ code, severity, where, message: text });
}

/** What was thrown where nothing should have been. */
export function faultText(error: unknown, innocent: 'files' | 'plan'): string {
  const reason = error instanceof Error ? error.message : String(error);
  return `this is a fault of Halfcup, not of your ${innocent} (${reason.split('\n')[0]}); please report it with the command that you gave.`;
}

/** Whether a thread has had too little memory. */
export const isShort = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
