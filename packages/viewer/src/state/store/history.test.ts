import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tries } from '../../testing.ts';
import { apply, EMPTY_HISTORY, inverse, patchBetween, recorded, redone, undone, type History } from './history.ts';

describe('history', () => {
  test('a patch turns one text into the other, and its inverse turns it back', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', '{', '\n', 'é'), maxLength: 30 });
    fc.assert(
      fc.property(text, text, (before, after) => {
        const patch = patchBetween(before, after);
        expect(apply(before, patch)).toBe(after);
        expect(apply(after, inverse(patch))).toBe(before);
      }),
      { seed: 6, numRuns: tries(500) },
    );
  });

  test('all steps undone give the first text, all redone the last', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.string({ maxLength: 20 }), fc.constantFrom(undefined, 'x', 'y')), {
          minLength: 1,
          maxLength: 30,
        }),
        (changes) => {
          let history: History = EMPTY_HISTORY;
          let text = 'start';
          for (const [next, merge] of changes) {
            history = recorded(history, 'change', text, next, merge);
            text = next;
          }
          const last = text;
          for (let back = undone(history, text); back !== null; back = undone(history, text))
            ({ history, text } = back);
          expect(text).toBe('start');
          for (let on = redone(history, text); on !== null; on = redone(history, text)) ({ history, text } = on);
          expect(text).toBe(last);
        },
      ),
      { seed: 7, numRuns: tries(300) },
    );
  });

  test('steps with one key are one step, also after others, but not after an undo', () => {
    let history = recorded(EMPTY_HISTORY, 'nudge', 'a', 'b', 'k');
    history = recorded(history, 'nudge', 'b', 'c', 'k');
    expect(history.past).toHaveLength(1);
    expect(undone(history, 'c')?.text).toBe('a');
    const again = redone(undone(history, 'c')!.history, 'a')!;
    expect(recorded(again.history, 'nudge', 'c', 'd', 'k').past).toHaveLength(2);
  });

  test('a merged step that comes back to where it began leaves nothing to undo', () => {
    const there = recorded(EMPTY_HISTORY, 'nudge', 'a', 'b', 'k');
    expect(recorded(there, 'nudge', 'b', 'a', 'k').past).toEqual([]);
  });
});
