/** Each recorded station beside its place in the plan, and under it what the review newly finds where it stands. */
import type { Finding, PlacedStation } from '@halfcup/core';
import type { JSX } from 'preact';
import { batch } from '@preact/signals';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { chooseStation } from '../../state/view/choose.ts';
import { isOpen, numberOf } from '../../state/view/derive.ts';
import { matterOf } from '../../state/view/voice.ts';
import { stationMove, VERDICT_WORD } from '../../placedWords.ts';
import { longFigure, longUnit, wheelFigure, wheelUnit } from '../../words.ts';
import { SeverityMark } from '../ui/SeverityMark.tsx';
import { VerdictMark } from './VerdictMark.tsx';

function go(store: Store, { station, course, recorded }: PlacedStation): void {
  batch(() => {
    chooseStation(store, station);
    store.destination.value = { kind: 'place', course, measure: null, at: recorded };
  });
}

interface Props {
  readonly stations: readonly PlacedStation[];
  /** Of the points and of stations as built. */
  readonly findings: readonly Finding[];
  readonly open: OpenPlan;
}

function Row({ one, open, findings }: { readonly one: PlacedStation } & Omit<Props, 'stations'>): JSX.Element {
  const store = useStore();
  const { units } = store;
  const station = open.analysis.stations.find(({ id }) => id === one.station);
  const added = findings.filter((finding) => finding.built === true && finding.where.station === one.station);
  return (
    <tr class={`verdict-${one.verdict.replace(' ', '-')}`}>
      <th scope="row" class="left">
        <button type="button" class="link-button" onClick={() => go(store, one)}>
          {station === undefined ? one.station : `${numberOf(station)} · ${station.name}`}
        </button>
        {added.map((finding, index) => (
          <span key={`${finding.code}-${index}`} class="wording built-change">
            <SeverityMark severity={isOpen(finding) ? finding.severity : 'waived'} />
            {matterOf(store, finding)}
          </span>
        ))}
      </th>
      <td class="figure">{longFigure(one.measures[0], units.value)}</td>
      <td class="figure">{longFigure(one.measures[1], units.value)}</td>
      <td class="figure">
        <span class="stacked">
          {wheelFigure(one.distance, units.value)} ± {wheelFigure(one.margin, units.value)}
        </span>
        <span class="stacked verdict">
          <VerdictMark verdict={one.verdict} />
          {VERDICT_WORD[one.verdict]}
        </span>
        <span class="stacked move">{stationMove(one, units.value)}</span>
      </td>
    </tr>
  );
}

export function BuiltRows({ stations, ...rest }: Props): JSX.Element {
  const { units } = useStore();
  return (
    <table class="items built-stations">
      <caption>
        Stations, by the first table recorded. Under each what the review finds where it stands and not in the plan.
      </caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            As built
          </th>
          <th scope="col">
            Planned<span class="unit">{longUnit(units.value)}</span>
          </th>
          <th scope="col">
            Recorded<span class="unit">{longUnit(units.value)}</span>
          </th>
          <th scope="col">
            Apart<span class="unit">{wheelUnit(units.value)}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {stations.map((one) => (
          <Row key={one.station} one={one} {...rest} />
        ))}
      </tbody>
    </table>
  );
}
