/** The plan's name, opening files, units. */
import type { Units } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { dateText } from '../../words.ts';
import { BackgroundTools } from '../background/BackgroundTools.tsx';
import { FileTools } from '../files/FileTools.tsx';
import { HistoryTools } from './HistoryTools.tsx';
import { VariantChoice } from '../variants/VariantChoice.tsx';

const UNITS: readonly (readonly [Units, string, string, string])[] = [
  ['metric', 'km', ', m', 'Metric units'],
  ['imperial', 'mi', ', yd', 'Imperial units'],
];

export function TopBar(): JSX.Element {
  const store = useStore();
  const plan = store.open.value?.document.plan;
  const about = [
    plan?.date === undefined ? '' : dateText(plan.date),
    plan?.revision === undefined ? '' : `Version ${plan.revision}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
  return (
    <header class="top">
      <h1 title={plan?.name}>{plan?.name ?? (store.loading.value ? '' : 'Halfcup')}</h1>
      <span class="soft about" title={about}>
        {about}
      </span>
      <span class="spring" />
      <div class="top-tools">
        {store.origin.value?.from === 'demo' ? <span class="example-mark">Example</span> : null}
        <FileTools />
        <HistoryTools />
        <VariantChoice />
        <div class="group" role="group" aria-label="Units">
          {UNITS.map(([system, far, near, label]) => (
            <button
              key={system}
              type="button"
              aria-pressed={store.units.value === system}
              aria-label={`${far}${near}: ${label}`}
              onClick={() => void (store.units.value = system)}
            >
              {far}
              <span class="wide-only">{near}</span>
            </button>
          ))}
        </div>
        <BackgroundTools />
      </div>
    </header>
  );
}
