/** Help, overall and for each command. */
import { COMMON, type CommandSpec, type OptionSpec } from './call.ts';
import { CAUTION } from './caution.ts';
import { COMMANDS } from './commands.ts';

function columns(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([first]) => first.length));
  return rows.map(([first, second]) => `  ${first.padEnd(width)}  ${second}`);
}

function optionShown({ name, kind, shown }: OptionSpec): string {
  if (kind === 'flag') return `--${name}`;
  return `--${name} ${typeof kind === 'string' ? (shown ?? 'VALUE') : kind.join('|')}`;
}

const optionRows = (specs: readonly OptionSpec[]): string[] =>
  columns(specs.map((spec) => [optionShown(spec), spec.about]));

/** What `halfcup --help` prints. */
export function overallHelp(): string {
  const lines = [
    'Halfcup plans the water and aid stations of a road race: every pass of the course by',
    'each station, the side of the road, the spacing, and the place of each sign and table.',
    '',
    'Use: halfcup COMMAND ARGUMENTS [--options]',
    '',
    'Commands',
    ...columns(COMMANDS.map(({ name, takes, about }) => [`${name} ${takes}`, about])),
    '',
    'Options of all commands',
    ...optionRows(COMMON),
    '  halfcup --version prints the version.',
    '',
    'Lengths are written with their unit: 60m, 5km, 100yd, 3.1mi, 25ft. A point is LON,LAT.',
    'It ends with 0 where it has done its work, with 1 where a review finds an error that nobody has',
    'waived, and with 2 where the call or a file cannot be used.',
    '',
    CAUTION,
  ];
  return `${lines.join('\n')}\n`;
}

/** What `halfcup COMMAND --help` prints. */
export function commandHelp({ name, takes, about, more = [], options }: CommandSpec): string {
  const lines = [
    `halfcup ${name} ${takes} [--options]`,
    `Prints ${about}.`,
    ...more,
    '',
    'Options',
    ...optionRows(options),
    '',
    'Options of all commands',
    ...optionRows(COMMON),
  ];
  return `${lines.join('\n')}\n`;
}
