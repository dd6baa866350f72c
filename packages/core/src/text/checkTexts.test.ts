import { expect, it } from 'vitest';
import { CHECKS } from '../review/checks.ts';
import { PLACED_RULES } from '../review/placedRules.ts';
import { STAGE_RULES } from '../review/stageRules.ts';
import { checkTitle, reasonText, sourceText } from './checkTexts.ts';
import * as english from './en/checks.ts';
import * as spanish from './es/checks.ts';

const RULES = [...STAGE_RULES, ...CHECKS, ...PLACED_RULES];

it('has a title for every check in every language, and none for a check that is not there', () => {
  const codes = RULES.map(({ code }) => code).sort();
  expect(Object.keys(english.titles).sort()).toEqual(codes);
  expect(Object.keys(spanish.titles).sort()).toEqual(codes);
  for (const code of codes) expect(checkTitle(code, 'es-MX'), code).not.toBe(checkTitle(code, 'en'));
  expect(RULES.map(({ title }) => title)).toEqual(RULES.map(({ code }) => checkTitle(code, 'en')));
});

it('has each reason in every language', () => {
  expect(Object.keys(spanish.reasons)).toEqual(Object.keys(english.reasons));
  for (const key of Object.keys(english.reasons)) expect(reasonText(key, 'es'), key).not.toBe(reasonText(key, 'en'));
  expect(reasonText('no-width', 'en')).toBe('no station gives the width of its road');
  expect(reasonText('no-width', 'es')).toBe('ningún puesto indica el ancho de su vía');
});

it('speaks English where it does not know the language, and shows a code or key that has no text as it is', () => {
  expect(checkTitle('sign-missed', 'tlh')).toBe(checkTitle('sign-missed', 'en'));
  expect(checkTitle('of-their-own', 'es')).toBe('of-their-own');
  expect(reasonText('toString', 'en')).toBe('toString');
});

it('shows what kind of source a rule has, in few words', () => {
  expect(sourceText('common practice, no source', 'en')).toBe('common practice');
  expect(sourceText('common practice, no source; the metre for the crew is an assumption', 'es')).toBe(
    'práctica habitual; el metro para el equipo es una suposición',
  );
  expect(sourceText('JCGM 106:2012', 'es')).toBe('JCGM 106:2012');
});

it('leaves no source of a check in English where another language is asked for', () => {
  for (const source of new Set(RULES.map((rule) => rule.source)))
    if (source !== 'JCGM 106:2012') expect(sourceText(source, 'es'), source).not.toMatch(/\b(?:the|of|by|read|no)\b/u);
});
