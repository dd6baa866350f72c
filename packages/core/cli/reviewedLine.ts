/** What one of several plans comes to: a line of JSON that names its file, made in this thread or in another. */
import { cleanJson } from './clean.ts';
import type { Finding } from '../src/finding.ts';
import { MEMORY } from './messages.ts';
import { faultText, isShort } from './spoken.ts';

export interface ReviewJob {
  readonly file: string;
  /** The folder from which relative names of files are taken. */
  readonly cwd: string;
  readonly strict: boolean;
}

/** All of it passes between threads. */
export interface ReviewedLine {
  /** One JSON document, with its line's end. */
  readonly line: string;
  /** Why the plan cannot be used, as the line holds it too; none where it can be. */
  readonly problems: readonly Finding[];
  readonly exit: 0 | 1 | 2;
}

/** The line of a document. */
export const lineOf = (file: string, document: object): string =>
  `${cleanJson(JSON.stringify({ file, ...document }))}\n`;

/** The line of a plan at which the program itself failed, or had too little memory: the others are not lost with it. */
export function faultLine(file: string, error: unknown): ReviewedLine {
  const [code, message] = isShort(error)
    ? ['out-of-memory', MEMORY.short()]
    : ['halfcup-fault', faultText(error, 'plan')];
  const problems: readonly Finding[] = [{ code, severity: 'error', message, where: { file } }];
  return { line: lineOf(file, { problems }), problems, exit: 2 };
}
