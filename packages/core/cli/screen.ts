/** What a text is shown on: how wide it is, and whether headings and severities have colours. */
import { styleText } from 'node:util';
import type { Severity } from '../src/finding.ts';
import type { Io, Sink } from './io.ts';

/** What may have a colour. */
export type Tone = 'heading' | Severity;

export interface Screen {
  /** Characters in a line. */
  readonly width: number;
  /** Whether `paint` writes colours. */
  readonly coloured: boolean;
  readonly paint: (tone: Tone, text: string) => string;
}

/** Of a terminal that does not know its width. */
const USUAL = 80;
/** Of a file or a pipe, which has none. */
const ENDLESS = 140;
/** Narrower than this, numbers would no longer fit. */
const LEAST = 40;

const STYLES = {
  heading: 'bold',
  error: ['bold', 'red'],
  warning: ['bold', 'yellow'],
  note: ['bold', 'cyan'],
} as const;

const plain = (_: Tone, text: string): string => text;
const coloured = (tone: Tone, text: string): string =>
  styleText(STYLES[tone] as Parameters<typeof styleText>[0], text, { validateStream: false });

/** What is written into a file. */
export const PAPER: Screen = { width: ENDLESS, coloured: false, paint: plain };

/**
 * A stream as people see it. `COLUMNS` says how wide where it is set, else the terminal. Colours: `FORCE_COLOR` decides,
 * then `NO_COLOR` and `TERM=dumb`, then whether it is a terminal.
 */
export function screenOf(sink: Sink, env: Io['env']): Screen {
  const colours = isColoured(sink, env);
  return { width: Math.max(widthOf(sink, env), LEAST), coloured: colours, paint: colours ? coloured : plain };
}

function widthOf({ isTTY, columns = 0 }: Sink, env: Io['env']): number {
  const asked = Number(env['COLUMNS']);
  if (Number.isInteger(asked) && asked > 0) return asked;
  if (!isTTY) return ENDLESS;
  return columns > 0 ? columns : USUAL;
}

function isColoured({ isTTY }: Sink, env: Io['env']): boolean {
  const forced = env['FORCE_COLOR'];
  if (forced !== undefined) return forced !== '0' && forced !== 'false';
  if ((env['NO_COLOR'] ?? '') !== '') return false;
  return isTTY && env['TERM'] !== 'dumb';
}
