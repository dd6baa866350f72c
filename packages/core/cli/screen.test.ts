import { describe, expect, it } from 'vitest';
import { NOWHERE, type Sink } from './io.ts';
import { screenOf } from './screen.ts';

const terminal = (columns?: number): Sink => ({ ...NOWHERE, isTTY: true, columns });
const pipe: Sink = NOWHERE;
const colours = (sink: Sink, env: Readonly<Record<string, string>>): boolean =>
  screenOf(sink, env).paint('error', 'x') !== 'x';

describe('the width of a screen', () => {
  it.each([
    [terminal(100), {}, 100],
    [terminal(), {}, 80],
    [terminal(0), {}, 80],
    [pipe, {}, 140],
    [pipe, { COLUMNS: '72' }, 72],
    [terminal(100), { COLUMNS: '72' }, 72],
    [terminal(100), { COLUMNS: 'wide' }, 100],
    [terminal(100), { COLUMNS: '-5' }, 100],
    [terminal(12), {}, 40],
  ] as const)('of %j with %j is %i', (sink, env, width) => {
    expect(screenOf(sink, env).width).toBe(width);
  });
});

describe('colours', () => {
  it.each([
    ['a terminal', terminal(80), {}, true],
    ['a pipe', pipe, {}, false],
    ['a terminal with NO_COLOR', terminal(80), { NO_COLOR: '1' }, false],
    ['a terminal with an empty NO_COLOR', terminal(80), { NO_COLOR: '' }, true],
    ['a terminal that is dumb', terminal(80), { TERM: 'dumb' }, false],
    ['a pipe with FORCE_COLOR', pipe, { FORCE_COLOR: '1' }, true],
    ['a pipe with FORCE_COLOR and NO_COLOR', pipe, { FORCE_COLOR: '1', NO_COLOR: '1' }, true],
    ['a terminal with FORCE_COLOR=0', terminal(80), { FORCE_COLOR: '0' }, false],
  ] as const)('on %s', (_, sink, env, expected) => {
    expect(colours(sink, env)).toBe(expected);
  });

  it('end where they began', () => {
    expect(screenOf(terminal(80), {}).paint('warning', 'Warnings')).toBe(
      '\u001B[1m\u001B[33mWarnings\u001B[39m\u001B[22m',
    );
  });
});
