import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { isPartMissing, plainError, reasonOf } from './trouble.ts';

const warned = vi.fn();
beforeEach(() => void vi.spyOn(console, 'warn').mockImplementation(warned));
afterEach(() => void vi.restoreAllMocks());

const named = (name: string): DOMException => new DOMException('Failed to execute on the thing', name);

test.each([
  [new TypeError('Failed to fetch'), 'there is no connection'],
  [new TypeError('NetworkError when attempting to fetch resource.'), 'there is no connection'],
  [new TypeError('Load failed'), 'there is no connection'],
  [new TypeError('Failed to fetch dynamically imported module: https://a.test/b.js'), 'a part of this page'],
  [new TypeError('error loading dynamically imported module: https://a.test/b.js'), 'a part of this page'],
  [new TypeError('Importing a module script failed.'), 'a part of this page'],
  [new Error('Unable to preload CSS for /assets/connect.css'), 'a part of this page'],
  [named('QuotaExceededError'), 'there is no room left'],
  [named('NotAllowedError'), 'the browser does not allow it'],
  [named('NotFoundError'), 'no longer there'],
  [named('NotReadableError'), 'cannot be read'],
  [named('VersionError'), 'a newer version of this page'],
  [named('NobodyKnowsThisError'), 'this page has a fault'],
  [new TypeError("Cannot destructure property 'a' of 'undefined'"), 'this page has a fault'],
  [new RangeError('Maximum call stack size exceeded'), 'this page has a fault'],
  ['a text', 'this page has a fault'],
  [undefined, 'this page has a fault'],
])('%s is told in plain words, and the error itself goes to the console', (error, words) => {
  warned.mockClear();
  const reason = reasonOf(error);
  expect(reason).toContain(words);
  expect(reason).not.toMatch(/\.$|fetch|destructure|Error\b|module|Failed|stack|https?:/u);
  expect(warned).toHaveBeenCalledWith(error);
});

test('what was written for people is shown as it is', () => {
  expect(reasonOf(plainError('the archive is cut off'))).toBe('the archive is cut off');
});

test('a script that is missing is told from a file that is', () => {
  expect(isPartMissing(new TypeError('Failed to fetch dynamically imported module: x'))).toBe(true);
  expect(isPartMissing(new TypeError('Failed to fetch'))).toBe(false);
  expect(isPartMissing(named('NotFoundError'))).toBe(false);
});
