/** Reads the arguments of a call against the command's own list of options; every problem is reported. */
import { parseArgs } from 'node:util';
import { type Result, good } from '../src/finding.ts';
import { suggestion } from '../src/plan/nearest.ts';
import { parseLength } from '../src/units.ts';
import { type Call, type CommandSpec, type OptionSpec, refuse } from './call.ts';
import { COMMANDS } from './commands.ts';
import { CALL } from './messages.ts';
import { COMMON } from './options.ts';
import { mask, unmask } from './positions.ts';

/** The command of a name, or why it is not known. */
export function commandOf(name: string): Result<CommandSpec> {
  const found = COMMANDS.find((command) => command.name === name);
  if (found !== undefined) return good(found);
  const names = COMMANDS.map((command) => command.name);
  return refuse(CALL.unknownCommand(name, suggestion(name, names, 'commands')));
}

/** Arguments and options of one command from what follows its name. */
export function readCall(command: CommandSpec, argv: readonly string[]): Result<Call> {
  const specs = [...command.options, ...COMMON];
  const config = Object.fromEntries(
    specs.map(({ name, kind }) => [name, { type: kind === 'flag' ? 'boolean' : 'string' } as const]),
  );
  const { tokens } = parseArgs({
    args: mask(argv),
    options: config,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const faults: string[] = [];
  const values = new Map<string, string>();
  const lists = new Map<string, string[]>();
  const positionals: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') positionals.push(unmask(token.value));
    if (token.kind !== 'option') continue;
    const spec = specs.find(({ name }) => name === token.name && token.rawName === `--${name}`);
    if (spec === undefined) faults.push(unknownOption(token.rawName, command, specs));
    else if (values.has(spec.name)) faults.push(CALL.twice(spec.name));
    else {
      if (spec.kind === 'repeated') lists.set(spec.name, [...(lists.get(spec.name) ?? []), unmask(token.value ?? '')]);
      else values.set(spec.name, unmask(token.value ?? ''));
      faults.push(...valueFaults(spec, token.value, token.inlineValue === true));
    }
  }
  if (!values.has('help')) faults.push(...countFaults(command, positionals));
  return faults.length > 0 ? refuse(...faults) : good({ positionals, values, lists });
}

function unknownOption(raw: string, command: CommandSpec, specs: readonly OptionSpec[]): string {
  const names = specs.map(({ name }) => `--${name}`);
  return CALL.unknownOption(raw, suggestion(raw, names, `options of ${command.name}`));
}

function valueFaults({ name, kind, shown }: OptionSpec, value: string | undefined, inline: boolean): string[] {
  if (kind === 'flag') return inline ? [CALL.noValue(name)] : [];
  const example = shown ?? 'VALUE';
  const missing = value === undefined || value === '' || (!inline && value.startsWith('-'));
  if (missing) return [typeof kind === 'string' ? CALL.valueMissing(name, example) : CALL.choiceMissing(name, kind)];
  const text = unmask(value);
  if (typeof kind !== 'string')
    return kind.includes(text) ? [] : [CALL.notAChoice(name, text, suggestion(text, kind, 'accepted'))];
  if (kind === 'text' || kind === 'repeated') return [];
  if (kind === 'count') return isCount(text) ? [] : [CALL.notACount(name, text, MOST, example)];
  return (kind === 'lengths' ? text.split(',') : [text]).flatMap((part) => {
    const parsed = parseLength(part);
    return parsed.ok ? [] : [`--${name}: ${parsed.message}`];
  });
}

/** The largest count that a call may ask for. */
const MOST = 256;

const isCount = (text: string): boolean => /^[1-9]\d*$/u.test(text) && Number(text) <= MOST;

function countFaults({ name, needs, most }: CommandSpec, positionals: readonly string[]): string[] {
  const all = needs.join(' and ');
  const problem = (message: string): string[] => [CALL.seeHelp(message, name)];
  if (positionals.includes('')) return problem(CALL.emptyArgument(name, all));
  if (positionals.length < needs.length) return problem(CALL.argumentMissing(name, all, positionals));
  return positionals.length > most ? problem(CALL.tooMany(name, all, positionals[most]!)) : [];
}
