import { describe, expect, it } from 'vitest';
import { EMPTY_HISTORY, recorded, undone, type History } from '../state/store/history.ts';
import { openDemo } from '../testing.ts';
import { isKeptPlan, keptOf, soundHistory } from './records.ts';

const origin = { id: 'p', from: 'file', saved: null, handle: null, modified: null, copy: false } as const;

describe('isKeptPlan', () => {
  it('takes what is made of an open plan, and nothing that lacks a part or has it of another kind', () => {
    const kept = keptOf(openDemo(), origin, EMPTY_HISTORY, { revision: 3, seq: 7, now: 1000 });
    expect(isKeptPlan(kept)).toBe(true);
    for (const key of [
      'id',
      'revision',
      'name',
      'file',
      'text',
      'variant',
      'saved',
      'modified',
      'copy',
      'changed',
      'opened',
    ]) {
      expect([key, isKeptPlan({ ...kept, [key]: undefined })]).toEqual([key, false]);
      expect([key, isKeptPlan({ ...kept, [key]: [] })]).toEqual([key, false]);
    }
    for (const value of [null, undefined, 5, 'text', [], {}]) expect(isKeptPlan(value)).toBe(false);
  });
});

describe('soundHistory', () => {
  const texts = ['one', 'one two', 'one two three', 'zero one two three'];
  const history = texts
    .slice(1)
    .reduce<History>((past, after, k) => recorded(past, `step ${k}`, texts[k]!, after), EMPTY_HISTORY);

  it('gives back a history that leads from the text and to it again', () => {
    expect(soundHistory(texts[3]!, history)).toEqual(history);
    const back = undone(history, texts[3]!)!;
    expect(soundHistory(back.text, back.history)).toEqual(back.history);
  });

  it('gives an empty one for a history of another text, or one that is none', () => {
    expect(soundHistory('something else', history)).toEqual(EMPTY_HISTORY);
    for (const value of [
      undefined,
      null,
      {},
      { past: 'x', future: [] },
      { past: [{ label: 'x' }], future: [] },
      { past: [null], future: [] },
    ])
      expect(soundHistory('one', value)).toEqual(EMPTY_HISTORY);
  });
});
