/** What surrounds a run of the command line: a process's streams and folder, or those that a test makes up. */
import { isAbsolute, join } from 'node:path';

/** Where a stream of text goes. */
export interface Sink {
  /** Resolves once the text has been taken; to false where nobody reads any more. */
  readonly write: (text: string) => Promise<boolean>;
  readonly isTTY: boolean;
  /** Characters in a line; absent or 0 where unknown. */
  readonly columns?: number | undefined;
}

export interface Io {
  readonly stdout: Sink;
  readonly stderr: Sink;
  /** What comes in by standard input, all of it or more than `most` bytes, the same each time it is asked for; absent where there is none. */
  readonly stdin?: (most: number) => Promise<Uint8Array>;
  /** The folder from which relative names of files are taken. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly now: () => Date;
  /** How many threads may work side by side; 0: none can be had, all is done in this one. */
  readonly processors: number;
}

/** What a run ends with: done, an error found, refused, or (as a shell has it of a closed pipe) nobody reads on. */
export type Exit = 0 | 1 | 2 | typeof CLOSED;

/** 128 and the number of SIGPIPE (POSIX.1-2017). */
export const CLOSED = 141;

/** The name that stands for standard input. */
export const STDIN = '-';

/** Where a file is, by the name that a person gave it. */
export const pathOf = ({ cwd }: Pick<Io, 'cwd'>, file: string): string => (isAbsolute(file) ? file : join(cwd, file));

/** A stream that nobody sees. */
export const NOWHERE: Sink = { write: async () => true, isTTY: false };

/** Surroundings of work whose output others print, such as that of a worker thread. */
export const silentIn = (cwd: string): Io => ({
  stdout: NOWHERE,
  stderr: NOWHERE,
  cwd,
  env: {},
  now: () => new Date(),
  processors: 0,
});
