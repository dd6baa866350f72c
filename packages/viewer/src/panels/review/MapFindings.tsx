/** Findings of one station on the map: while it is dragged, and after it was chosen there, each with its remedy. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { chooseFinding } from '../../state/view/choose.ts';
import { findingsByStation, isOpen } from '../../state/view/derive.ts';
import { graveFirst } from '../../state/view/grouping.ts';
import { matterOf } from '../../state/view/voice.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { RemedyButtons } from './RemedyButtons.tsx';

/** More would cover the map; the station's panel has them all. */
const MOST = 3;

export function MapFindings(): JSX.Element | null {
  const store = useStore();
  const [open, id] = [store.open.value, store.foundAt.value];
  const station = open?.analysis.stations.find((one) => one.id === id);
  if (open === null || station === undefined || station.id !== store.selected.value) return null;
  const findings = graveFirst((findingsByStation(open).get(station.id) ?? []).filter(isOpen), open);
  if (findings.length === 0) return null;
  const close = (): void => void (store.foundAt.value = null);
  return (
    <section class="map-findings" aria-label={`Findings at ${station.name}`}>
      <header>
        <h2 id="map-findings-head" tabindex={-1}>
          {station.name}
        </h2>
        <button type="button" onClick={close}>
          Close
        </button>
      </header>
      <ul>
        {findings.slice(0, MOST).map((finding, index) => (
          <li key={`${finding.code}-${index}`} class={`map-finding finding-${finding.severity}`}>
            <SeverityMark severity={finding.severity} />
            <button type="button" class="link-button" onClick={() => chooseFinding(store, finding)}>
              {matterOf(store, finding)}
            </button>
            <RemedyButtons finding={finding} subject={station.name} heading="map-findings-head" whileHeld />
          </li>
        ))}
      </ul>
      {findings.length > MOST ? <p class="soft">and {findings.length - MOST} more in the panel</p> : null}
    </section>
  );
}
