import { expect, it } from 'vitest';
import { en } from './en.ts';
import { es } from './es.ts';
import { LANGUAGES, SHEET_TEXTS, languageNote, textOf } from './languages.ts';

it('takes a language by its tag, or by its first part where a region is named', () => {
  for (const one of SHEET_TEXTS) expect(textOf(one.language)).toEqual({ text: one, note: null });
  expect(textOf('es-MX').text).toBe(es);
  expect(textOf('EN-gb')).toEqual({ text: en, note: null });
});

it('prints in English where the language is not there, and says so with the languages that are', () => {
  const { text, note } = textOf('tlh');
  expect(text).toBe(en);
  expect(note).toMatch(/"tlh".*English.*"es"/u);
  expect(languageNote('tlh')).toBe(note);
  expect(languageNote('es-MX')).toBeNull();
});

it('lists every language by its tag and its own name', () => {
  expect(LANGUAGES.map(({ language, name }) => [language, name])).toEqual([
    ['en', 'English'],
    ['es', 'español'],
  ]);
});

/** Every sentence by its path; functions are called with sample texts. */
function sentences(value: unknown, path: string): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [];
  return Object.entries(value as object).flatMap(([key, inner]) => sentences(inner, `${path}.${key}`));
}
const paths = (value: unknown, path: string = ''): string[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => paths(inner, `${path}.${key}`))
    : [path];

it('has every key in both languages, none empty, and hardly a sentence in common', () => {
  expect(paths(es).sort()).toEqual(paths(en).sort());
  const [english, spanish] = [sentences(en, ''), new Map(sentences(es, ''))];
  for (const [path, sentence] of english) expect(sentence.trim(), path).not.toBe('');
  for (const [path, sentence] of spanish) expect(sentence.trim(), path).not.toBe('');
  const same = english.filter(([path, sentence]) => spanish.get(path) === sentence && sentence.includes(' '));
  expect(same).toEqual([]);
});

it('writes large counts in the way of each language', () => {
  expect(en.frame.count(1800)).toBe('1,800');
  expect(es.frame.count(1800)).toBe('1800');
  expect(es.frame.count(12_800)).toBe('12\u202F800');
});
