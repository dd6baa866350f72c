/** What a command is and what a call of it holds, once read. */
import { type Finding, type Result, bad } from '../src/finding.ts';
import { parseLength } from '../src/units.ts';
import type { Exit, Io } from './io.ts';
import type { Screen } from './screen.ts';

/** How an option's value is read. A flag has none; `repeated` is a text that may be given many times; `count` a whole number from 1 to 256. */
export type OptionKind = 'flag' | 'text' | 'repeated' | 'count' | 'length' | 'lengths' | readonly string[];

export interface OptionSpec {
  readonly name: string;
  readonly kind: OptionKind;
  /** How help shows the value, e.g. `FILE`. */
  readonly shown?: string;
  readonly about: string;
}

export interface CommandSpec {
  readonly name: string;
  /** Its arguments as help shows them. */
  readonly takes: string;
  /** Names of the arguments that must be there, in order. */
  readonly needs: readonly string[];
  /** Most arguments it takes; Infinity where the last may be repeated. */
  readonly most: number;
  readonly about: string;
  /** More paragraphs for its own help. */
  readonly more?: readonly string[];
  readonly arguments: readonly { readonly name: string; readonly about: string }[];
  /** Calls, without the program's name, that work in the folder of the demo. */
  readonly examples: readonly string[];
  /** What its exit status may say beside success and refusal. */
  readonly exits?: readonly (readonly [status: string, about: string])[];
  /** Its own, which stand in the place of common ones of the same name. */
  readonly options: readonly OptionSpec[];
  /** Whether `--out` is a folder. */
  readonly outFolder?: boolean;
  /** Loaded only when called, so that help needs no geometry. */
  readonly load: () => Promise<{ readonly run: Run }>;
}

/** A call whose arguments and option values are all of the right kind. */
export interface Call {
  readonly positionals: readonly string[];
  readonly values: ReadonlyMap<string, string>;
  /** Values of options that may be repeated, in order. */
  readonly lists: ReadonlyMap<string, readonly string[]>;
}

/** What is printed: the same everywhere, or fitted to where it is shown. */
export type Printed = string | ((screen: Screen) => string);

export interface Output {
  readonly text: Printed;
  /** What `--out` writes where that is not the text, which is printed then all the same. */
  readonly written?: string;
  /** The command has itself written to `--out`, or printed; the text is printed after it. */
  readonly saved?: true;
  /** The text is GPX, which alone may go to a file whose name ends so. */
  readonly gpx?: true;
  /** What the program ends with; absent: 0. */
  readonly exit?: Exit;
  /** Printed on stderr where the text has no room for findings. */
  readonly notes?: readonly Finding[];
}

export type Run = (call: Call, io: Io) => Promise<Result<Output>>;

/** A call that cannot be used; the message says what is the matter and what to do. */
export const refuse = (...messages: readonly string[]): Result<never> =>
  bad(messages.map((message) => ({ code: 'call', severity: 'error', message, where: {} })));

export const has = (call: Call, flag: string): boolean => call.values.has(flag);

/** The number of a count option; the parser has checked that it is one. */
export function countOf(call: Call, name: string): number | undefined {
  const text = call.values.get(name);
  return text === undefined ? undefined : Number(text);
}

/** The metres of a length option; the parser has checked that they can be read. */
export function lengthOf(call: Call, name: string): number | undefined {
  const text = call.values.get(name);
  return text === undefined ? undefined : metresOf(text);
}

/** The metres of a list of lengths, separated by commas. */
export const lengthsOf = (call: Call, name: string): readonly number[] | undefined =>
  call.values.get(name)?.split(',').map(metresOf);

function metresOf(text: string): number {
  const parsed = parseLength(text);
  if (!parsed.ok) throw new Error(`"${text}" got past the parser of options`);
  return parsed.value;
}
