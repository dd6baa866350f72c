/** Help, overall and for each command. */
import type { CommandSpec, OptionSpec } from './call.ts';
import { CAUTION } from './caution.ts';
import { COMMANDS } from './commands.ts';
import { paragraphBy } from './breaks.ts';
import { COMMON } from './options.ts';
import type { Screen } from './screen.ts';

/** Help is not made wider than this: long lines are hard to read. */
const WIDEST = 100;
/** What has a longer name stands on a line of its own, its meaning under it. */
const FIRST = 26;

/** Help has no characters but narrow ones, and loads nothing that measures others. */
export const paragraph = (text: string, width: number, hang?: string): string =>
  paragraphBy((line) => line.length, text, width, hang);

type Row = readonly [name: string, about: string];

/** Names and what they mean, in two columns. */
export function columns(rows: readonly Row[], width: number): string[] {
  const first = Math.max(...rows.map(([name]) => name.length).filter((length) => length <= FIRST));
  const hang = ' '.repeat(first + 4);
  return rows.map(([name, about]) =>
    name.length > first
      ? `  ${name}\n${hang}${paragraph(about, width, hang)}`
      : `  ${name.padEnd(first)}  ${paragraph(about, width, hang)}`,
  );
}

function optionShown({ name, kind, shown }: OptionSpec): string {
  if (kind === 'flag') return `--${name}`;
  return `--${name} ${typeof kind === 'string' ? (shown ?? 'VALUE') : kind.join('|')}`;
}

const optionRows = (specs: readonly OptionSpec[]): readonly Row[] =>
  specs.map((spec) => [optionShown(spec), spec.about]);

const SUCCESS: Row = ['0', 'success'];
const REVIEWED: Row = ['1', 'review found an error that is not waived'];
const REFUSED: Row = ['2', 'bad arguments, unreadable file, or output that cannot be written'];
const UNREAD: Row = ['141', 'nobody read the output to its end'];

/** A heading with what stands under it; nothing where that is nothing. */
export const section = (title: string, lines: readonly string[], { paint }: Screen): string =>
  lines.length === 0 ? '' : [paint('heading', title), ...lines].join('\n');

export const joined = (sections: readonly string[]): string =>
  `${sections.filter((part) => part !== '').join('\n\n')}\n`;

export const narrowed = (screen: Screen): Screen => ({ ...screen, width: Math.min(screen.width, WIDEST) });

/** What `halfcup --help` prints. */
export function overallHelp(wide: Screen): string {
  const screen = narrowed(wide);
  const { width } = screen;
  return joined([
    paragraph(
      'Halfcup plans the water and aid stations of a road race: every time the course passes a station, the side of the road, the spacing, and the place of each sign and table.',
      width,
    ),
    screen.paint('heading', 'Usage: npx halfcup COMMAND ARGUMENTS [OPTIONS]'),
    section(
      'Commands:',
      columns(
        COMMANDS.map(({ name, takes, about }) => [`${name} ${takes}`, about]),
        width,
      ),
      screen,
    ),
    section('Options of all commands:', columns(optionRows(COMMON), width), screen),
    paragraph(
      'npx halfcup COMMAND --help explains a command; npx halfcup --version prints the version; npx halfcup --limits prints how large files may be. Lengths are written with their unit: 60m, 5km, 100yd, 3.1mi, 25ft. A point is LON,LAT, longitude first.',
      width,
    ),
    section('Examples:', EXAMPLES.map(exampleLine), screen),
    section('Exit status:', columns([SUCCESS, REVIEWED, REFUSED, UNREAD], width), screen),
    paragraph(CAUTION, width),
  ]);
}

const EXAMPLES: readonly string[] = ['start "Our race" full.gpx --every 5km --out race.json', 'review plan.json'];

const exampleLine = (example: string): string => `  npx halfcup ${example}`;

/** What `halfcup COMMAND --help` prints. */
export function commandHelp(command: CommandSpec, wide: Screen): string {
  const screen = narrowed(wide);
  const { width, paint } = screen;
  const { name, takes, about, more = [], arguments: taken, options, examples, exits = [] } = command;
  const own = new Set(options.map((option) => option.name));
  return joined([
    paint('heading', `Usage: ${paragraph(`npx halfcup ${name} ${takes} [OPTIONS]`, width, ' '.repeat(7))}`),
    [`${about.charAt(0).toUpperCase()}${about.slice(1)}.`, ...more].map((text) => paragraph(text, width)).join('\n'),
    section(
      'Arguments:',
      columns(
        taken.map((one) => [one.name, one.about]),
        width,
      ),
      screen,
    ),
    options.length === 0 ? '' : section('Options:', columns(optionRows(options), width), screen),
    section('Options of all commands:', columns(optionRows(COMMON.filter((one) => !own.has(one.name))), width), screen),
    section('Examples:', examples.map(exampleLine), screen),
    section('Exit status:', columns([SUCCESS, ...exits, REFUSED], width), screen),
  ]);
}
