/** Findings in English, as every analysis gives them: in the plan's units, with its names. */
import type { Finding } from '../finding.ts';
import { findings } from './en/findings.ts';
import { words } from './en/words.ts';
import { joined } from './sentence.ts';
import { type AnyTexts, type Spoken, sentenceWith } from './spoken.ts';
import type { Voice } from './voice.ts';

export const ENGLISH: Spoken = { texts: findings as unknown as AnyTexts, words };

/** The same findings, their messages in English with those units and names. */
export const inEnglish = (findings: readonly Finding[], voice: Omit<Voice, 'language'>): readonly Finding[] =>
  findings.map((finding) =>
    finding.params === undefined ? finding : { ...finding, message: joined(sentenceWith(finding, voice, ENGLISH)) },
  );
