/**
 * What a caught error means to the person, as a clause that ends a sentence: "the disk is full". Browsers word the same
 * trouble differently and for programmers, so nothing that they say is shown; it goes to the console.
 */

/** Marks an error whose message is already a clause for people. */
const PLAIN = 'PlainError';

/** An error to be thrown whose message people may read. */
export function plainError(clause: string): Error {
  const error = new Error(clause);
  error.name = PLAIN;
  return error;
}

/** How browsers word that a script of the page could not be had (Chromium, Firefox, Safari), and what vite says of styles. */
const NOT_LOADED =
  /dynamically imported module|Importing a module script failed|Unable to preload CSS|Failed to load module script/iu;
/** How they word that a request had no answer. */
const NO_ANSWER = /Failed to fetch|NetworkError|Load failed|network connection was lost/iu;

export const PART_MISSING = 'a part of this page could not be loaded; check the connection, then reload the page';
const NO_CONNECTION = 'there is no connection, or the other side does not answer this page';
/** Where nobody but a programmer can tell why. */
export const FAULT = 'this page has a fault; reload it and try again';

/** By the names that the DOM standard gives its exceptions. */
const NAMED: Readonly<Record<string, string>> = {
  QuotaExceededError: 'there is no room left for it',
  NotAllowedError: 'the browser does not allow it',
  SecurityError: 'the browser does not allow it',
  NotFoundError: 'the file is no longer there',
  NotReadableError: 'the file cannot be read; it may be in use, or its disk was removed',
  NoModificationAllowedError: 'the file is locked by another program',
  InvalidStateError: 'the browser has closed what this page keeps; reload the page',
  InvalidModificationError: 'the file cannot be changed there',
  VersionError: 'a newer version of this page has changed what is kept; reload the page',
  TimeoutError: 'it took too long',
  UnknownError: 'the browser could not do it',
  AbortError: 'it was interrupted',
  DataCloneError: FAULT,
};

/** Whether a script or style of the page is what is missing. */
export const isPartMissing = (error: unknown): boolean => error instanceof Error && NOT_LOADED.test(error.message);

/** Why a worker gave no answer: a script that cannot be had comes without a message, a fault in it with one. */
export function workerTrouble({ message }: { readonly message?: string | undefined }): string {
  if (message === undefined || message === '') return PART_MISSING;
  console.warn(message);
  return FAULT;
}

/** Why something failed, in plain words without a full stop. The error itself is left in the console. */
export function reasonOf(error: unknown): string {
  if (error instanceof Error && error.name === PLAIN) return error.message;
  console.warn(error);
  if (isPartMissing(error)) return PART_MISSING;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (Object.hasOwn(NAMED, name)) return NAMED[name]!;
  return error instanceof Error && NO_ANSWER.test(error.message) ? NO_CONNECTION : FAULT;
}
