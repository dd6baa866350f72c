import { describe, expect, it } from 'vitest';
import type { CommandSpec } from './call.ts';
import { readCall } from './parse.ts';
import { mask, parsePosition, unmask } from './positions.ts';

/** An option whose value begins with a position, as marks will have. */
const command: CommandSpec = {
  name: 'probe',
  takes: 'FILE',
  needs: ['a file'],
  most: Infinity,
  about: 'what a call holds',
  arguments: [],
  examples: [],
  options: [{ name: 'mark', kind: 'text', about: 'a position and a measure' }],
  load: async () => Promise.reject(new Error('not to be run')),
};

describe('positions on the command line', () => {
  it('are arguments and option values also where they begin with a minus', () => {
    for (const mark of [['--mark=-118.5,34=10km'], ['--mark', '-118.5,34=10km']]) {
      const call = readCall(command, ['FILE', '-118.51,34.08', ...mark, '-.5,-1']);
      expect(call).toMatchObject({
        ok: true,
        value: { positionals: ['FILE', '-118.51,34.08', '-.5,-1'], values: new Map([['mark', '-118.5,34=10km']]) },
      });
    }
  });

  it('come back from the mask as they were, and options are never masked', () => {
    const argv = ['-118.51,34.08', '-5m', '-.5,1', '--mark=-1,2=3km', '--json', '-j', '1,2', '', '-', '--'];
    expect(mask(argv).map(unmask)).toEqual(argv);
    expect(mask(argv).filter((token, k) => token !== argv[k])).toHaveLength(3);
  });

  it('are read as longitude and latitude', () => {
    expect(parsePosition('-118.51,34.08')).toMatchObject({ ok: true, value: [-118.51, 34.08] });
    expect(parsePosition(' 180 , -90 ')).toMatchObject({ ok: true, value: [180, -90] });
    expect(parsePosition('-0,-0')).toEqual({ ok: true, value: [0, 0], findings: [] });
  });

  it.each(['', '1', '1,2,3', '1;2', '1,2e3', '0x1,2', 'Infinity,0', '1,', ',1', '1 2', '1.2.3,4'])(
    'are refused where they are none: "%s"',
    (token) => {
      expect(parsePosition(token)).toMatchObject({
        ok: false,
        findings: [{ message: expect.stringContaining('LON,LAT') as string }],
      });
    },
  );

  it('whose latitude is over 90 get the hint that the two may be swapped, where that would help', () => {
    expect(parsePosition('34.08,-118.51')).toMatchObject({
      ok: false,
      findings: [{ message: expect.stringContaining('swapped (-118.51,34.08)') as string }],
    });
    expect(parsePosition('134,95')).toMatchObject({
      ok: false,
      findings: [{ message: expect.not.stringContaining('swapped') as string }],
    });
  });
});
