import { expect, test } from 'vitest';
import { coursesOf } from '../state/view/derive.ts';
import { openDemo } from '../testing.ts';
import { stripPasses, stripScale, wholeView } from './geometry.ts';
import { markedStretches, retracedStretches, WORDS } from './outAndBack.ts';
import { pinched } from './useGround.ts';

const demo = openDemo();
const [full] = coursesOf(demo.analysis) as [ReturnType<typeof coursesOf>[number]];
const whole = stripScale(wholeView(full), 1400, 18);
const passes = stripPasses(demo.analysis.stations, full.id);

test('the demo’s out-and-back is marked, and its words cover no station', () => {
  const found = retracedStretches(full);
  const longest = found.toSorted((a, b) => b.to - b.from - (a.to - a.from))[0]!;
  expect(markedStretches(found, passes, whole)).toHaveLength(found.length);
  const near = stripScale([longest.from - 500, longest.to + 500], 1400, 18);
  const marked = markedStretches([longest], passes, near);
  expect(marked[0]!.words).not.toBeNull();
  for (const { words, from, to } of marked) {
    if (words === null) continue;
    expect(words - WORDS / 2).toBeGreaterThanOrEqual(from);
    expect(words + WORDS / 2).toBeLessThanOrEqual(to);
    for (const pass of passes) expect(Math.abs(near(pass.measure) - words)).toBeGreaterThan(WORDS / 2);
  }
});

test('where a stretch has no room between its stations, it has no words', () => {
  const [mark] = markedStretches(
    [{ from: 10_000, to: 12_000, retraced: true }],
    [{ ...passes[0]!, measure: 11_000, items: [] }],
    whole,
  );
  expect(mark).toMatchObject({ words: null });
});

test('a station’s passes of one course keep their numbers in running order', () => {
  const twice = passes.filter(({ id }) => passes.filter((one) => one.id === id).length > 1);
  expect(twice.length).toBeGreaterThan(1);
  for (const { id } of twice)
    expect(passes.filter((one) => one.id === id).map(({ nth }) => nth)).toEqual(
      passes.filter((one) => one.id === id).map((_, index) => index),
    );
});

test('two fingers keep under them the places that they took hold of', () => {
  const view = [10_000, 14_000] as const;
  const scale = stripScale(view, 1036, 18);
  const after = stripScale(
    pinched(view, (x) => scale.invert(x), [318, 718], [218, 818], full),
    1036,
    18,
  );
  expect(after.invert(218)).toBeCloseTo(scale.invert(318), 6);
  expect(after.invert(818)).toBeCloseTo(scale.invert(718), 6);
});
