import { describe, expect, it } from 'vitest';
import { NO_LIMIT, move } from './drive.ts';

const all = (time: number): { measures: number[]; times: number[] } => ({ measures: [0], times: [time] });

describe('A vehicle on a course', () => {
  it('goes when it is ready where nothing holds it', () => {
    expect(move({ opens: NO_LIMIT, closes: NO_LIMIT }, 1000, 6000, 50, 10)).toEqual({
      leave: 50,
      arrive: 550,
      late: 0,
    });
  });

  it('waits where it stands until the whole way is open to it', () => {
    const opens = { measures: [0, 3000, 6000], times: [0, 900, 900] };
    // At 3,000 m not before 900 s, 300 s after it leaves.
    expect(move({ opens, closes: NO_LIMIT }, 0, 6000, 50, 10)).toEqual({ leave: 600, arrive: 1200, late: 0 });
  });

  it('tells how long it would be on closed course, wherever on the way that is worst', () => {
    const closes = { measures: [0, 3000, 6000], times: [1000, 200, 1000] };
    expect(move({ opens: NO_LIMIT, closes }, 0, 6000, 0, 10).late).toBe(100);
    expect(move({ opens: NO_LIMIT, closes: all(600) }, 0, 6000, 0, 10).late).toBe(0);
    expect(move({ opens: NO_LIMIT, closes: all(599) }, 0, 6000, 0, 10).late).toBe(1);
  });

  it('drives towards the start as well', () => {
    const opens = { measures: [0, 3000, 6000], times: [0, 900, 0] };
    expect(move({ opens, closes: NO_LIMIT }, 6000, 0, 0, 10)).toEqual({ leave: 600, arrive: 1200, late: 0 });
  });
});
