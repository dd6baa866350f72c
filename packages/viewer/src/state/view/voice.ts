/** Findings as they are shown: in the units chosen, with the open plan's names. The page speaks English. */
import { findingLine, findingSentence, type Finding, type Plan } from '@halfcup/core';
import type { Units } from '@halfcup/core/plan';
import { findingInWords, findingSubject, NO_NAMES, voiceOf, type Sentence, type Voice } from '@halfcup/core/sentences';
import type { OpenPlan, Store } from '../store/store.ts';
import { keep, numberOf } from './derive.ts';

/** Kept with the plan: a list of findings asks for it once each. */
const voices: (plan: Plan) => Readonly<Record<Units, Voice>> = keep((plan) => ({
  metric: voiceOf(plan, { units: 'metric', language: 'en' }),
  imperial: voiceOf(plan, { units: 'imperial', language: 'en' }),
}));

/** The voice in which the page speaks of what is open. */
export const voiceIn = ({ open, units: { value: units } }: Store): Voice =>
  open.value === null ? { language: 'en', units, names: NO_NAMES } : voices(open.value.analysis.plan)[units];

/** What a finding is about, for its head: a station with its number, a race, a course; empty where it is about none. */
export const subjectIn: (open: OpenPlan) => (finding: Finding) => string = keep((open) => {
  const { names } = voiceOf(open.analysis.plan);
  const numbered = new Map(open.analysis.stations.map((one) => [one.id, `${numberOf(one)} · ${one.name}`]));
  return (finding) => findingSubject(finding, { ...names, station: (id) => numbered.get(id) ?? names.station(id) });
});

/** What is the matter, what it should be, what to do. */
export const partsOf = (store: Store, finding: Finding): Sentence => findingSentence(finding, voiceIn(store));

/** The same as one text. */
export const messageOf = (store: Store, finding: Finding): string => findingInWords(finding, voiceIn(store)).message;

/** "plan.json:12:5: ", for the line that a finding is read from; empty where it is about no file. */
export const filePlace = ({ where: { file, line, column }, ...finding }: Finding): string =>
  file === undefined
    ? ''
    : findingLine({
        ...finding,
        message: '',
        where: { file, ...(line === undefined ? {} : { line }), ...(column === undefined ? {} : { column }) },
      });

/** Of the first of several findings; `null` where there is none. */
export const firstMessage = (store: Store, findings: readonly Finding[]): string | null =>
  findings[0] === undefined ? null : messageOf(store, findings[0]);

/** What is the matter alone, without its full stop: for a name or a notice. */
export const matterOf = (store: Store, finding: Finding): string => partsOf(store, finding)[0].replace(/\.$/u, '');
