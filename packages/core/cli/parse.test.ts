import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from './commands.ts';
import { commandOf, readCall } from './parse.ts';
import { tries } from '../src/testing/tries.ts';

const word = fc.oneof(
  fc.string(),
  fc.constantFrom(
    '--json',
    '--out',
    '--units',
    'metric',
    '--track=1',
    '--',
    '-',
    '-x',
    '--radius',
    '60m',
    '--no-json',
    '__proto__',
    '--__proto__',
    '-1,2',
    'FILE',
    '--at=1km,2mi',
    '--=',
    '--help',
  ),
);

describe('the reader of calls', () => {
  it('takes any words whatever, and either gives a call of known options or says why not', () => {
    fc.assert(
      fc.property(fc.constantFrom(...COMMANDS), fc.array(word, { maxLength: 8 }), (command, argv) => {
        const call = readCall(command, argv);
        if (!call.ok) {
          expect(call.findings.length).toBeGreaterThan(0);
          for (const { message } of call.findings) expect(message).toMatch(/--?\S|argument|needs/u);
          return;
        }
        const { positionals, values } = call.value;
        const known = new Set([...command.options.map(({ name }) => name), 'json', 'units', 'out', 'force', 'help']);
        expect([...values.keys()].filter((name) => !known.has(name))).toEqual([]);
        expect(values.has('help') || positionals.length >= command.needs.length).toBe(true);
        for (const text of positionals) expect(argv).toContain(text);
      }),
      { seed: 4, numRuns: tries(2000) },
    );
  });

  it('knows each command by its own name only', () => {
    for (const { name } of COMMANDS) expect(commandOf(name)).toMatchObject({ ok: true, value: { name } });
    for (const name of ['', 'toString', '__proto__', 'Course', '--course']) expect(commandOf(name).ok).toBe(false);
  });
});
