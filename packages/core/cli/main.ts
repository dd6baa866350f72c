#!/usr/bin/env node
/** The process of `halfcup`: its streams, folder and exit status, given to the program. The only file that touches the process. */
import { availableParallelism, constants } from 'node:os';
import type { Sink } from './io.ts';
import { main } from './program.ts';
import { dropAll, whileWaiting } from './wholeFile.ts';

/** Codes of a stream whose reader has gone, which is no fault of anybody: `head` has seen enough. */
const CLOSED = new Set(['EPIPE', 'ERR_STREAM_DESTROYED']);

const isClosed = (error: NodeJS.ErrnoException): boolean => CLOSED.has(error.code ?? '');

/** The end of a run whose output cannot be written, such as to a full disk. */
function unwritable(error: NodeJS.ErrnoException): never {
  process.stderr.write(`halfcup: the output could not be written (${error.code ?? error.message}).\n`);
  process.exit(2);
}

function sinkOf(stream: NodeJS.WriteStream): Sink {
  // Every failed write also reaches its callback.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (!isClosed(error) && stream === process.stdout) unwritable(error);
  });
  const write = async (text: string): Promise<boolean> =>
    new Promise((resolve) => {
      stream.write(text, (error) => resolve(error === undefined || error === null));
    });
  return {
    write,
    isTTY: stream.isTTY,
    get columns() {
      return stream.columns;
    },
  };
}

/** Standard input, read when it is first asked for. */
function inputOf(stream: NodeJS.ReadStream): (most: number) => Promise<Uint8Array> {
  let read: Promise<Uint8Array> | undefined;
  const all = async (most: number): Promise<Uint8Array> => {
    const chunks: Uint8Array[] = [];
    let taken = 0;
    for await (const chunk of stream) {
      chunks.push(chunk as Uint8Array);
      taken += (chunk as Uint8Array).length;
      if (taken > most) break;
    }
    return Buffer.concat(chunks);
  };
  return async (most) => (read ??= all(most));
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Told to end: what is half written goes, and the status is the shell's for that signal. */
const end = (signal: NodeJS.Signals): void =>
  void dropAll().finally(() => process.exit(128 + constants.signals[signal]));

// Where nothing is half written the system ends the process, at once, also in the middle of a long reckoning.
whileWaiting((some) => {
  for (const signal of SIGNALS) {
    if (some) process.on(signal, end);
    else process.off(signal, end);
  }
});

process.exitCode = await main(process.argv.slice(2), {
  stdout: sinkOf(process.stdout),
  stderr: sinkOf(process.stderr),
  stdin: inputOf(process.stdin),
  cwd: process.cwd(),
  env: process.env,
  now: () => new Date(),
  processors: availableParallelism(),
});
