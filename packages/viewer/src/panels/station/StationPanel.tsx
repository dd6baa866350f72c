/** The selected station: where it is, what stands there, which runners pass, and what the checks say. */
import { formatMeasure, type Item, type LaidDirection, type StationLayout, type StationPass } from '@halfcup/core';
import type { JSX } from 'preact';
import { findingsByStation, leadOf, numberOf, signDistance } from '../../state/view/derive.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import {
  comeFrom,
  DASH,
  ITEM_WORD,
  lengthText,
  percent,
  SERVED_WORD,
  sideWords,
  wheelFigure,
  wheelRange,
  wheelUnit,
} from '../../words.ts';
import { Fact } from '../ui/Fact.tsx';
import { FindingCard } from '../review/FindingCard.tsx';
import { StationActions } from './StationActions.tsx';
import { StationEditor } from './StationEditor.tsx';
import { StationSketch } from './StationSketch.tsx';

function Items({ direction }: { readonly direction: LaidDirection }): JSX.Element {
  const { units } = useStore();
  const order = direction.items.toSorted((a, b) => a.from - b.from);
  const margin = (item: Item): JSX.Element | null =>
    item.wheel === null || item.wheelMargin < 0.05 ? null : (
      <span class="soft wording"> ± {wheelFigure(item.wheelMargin, units.value)}</span>
    );
  return (
    <table class="items">
      <caption>From the chalk mark, {wheelUnit(units.value)}; before it −</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Item
          </th>
          <th scope="col">along</th>
          <th scope="col">by wheel</th>
        </tr>
      </thead>
      <tbody>
        {order.map((item) => (
          <tr key={item.kind}>
            <th scope="row" class="left">
              {ITEM_WORD[item.kind]}
              {item.wording === undefined ? null : <span class="soft wording">“{item.wording}”</span>}
              {item.boxes === undefined || item.boxes.length === 0 ? null : (
                <span class="soft wording">{item.boxes.length} boxes</span>
              )}
              {item.byHand === true ? <span class="soft wording">placed by hand</span> : null}
            </th>
            <td class="figure">{wheelRange(item.along, units.value)}</td>
            <td class="figure">
              {item.wheel === null ? DASH : wheelRange(item.wheel, units.value)}
              {margin(item)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Passes({ station, open }: { readonly station: StationLayout; readonly open: OpenPlan }): JSX.Element {
  const { units } = useStore();
  const raceName = (pass: StationPass): string =>
    open.analysis.plan.races.find((race) => race.id === pass.race)?.name ?? pass.race;
  if (station.passes.length === 0) return <p class="soft">No course passes here.</p>;
  return (
    <ul class="passes">
      {station.passes.map((pass) => (
        <li key={`${pass.race}-${pass.pass}`} class={pass.served ? '' : 'seen'}>
          <span class="pass-race">
            {raceName(pass)}
            {pass.pass > 0 ? `, pass ${pass.pass + 1}` : ''}
          </span>
          <span class="pass-measure">{formatMeasure(pass.measure, units.value)}</span>
          <span class="pass-how">{pass.served ? 'served' : 'seen, not served'}</span>
          <span class="pass-from">
            {comeFrom(pass.azimuthDeg)}; pin on their {pass.side === 'unclear' ? 'side unclear' : pass.side}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Facts({
  station,
  lead,
}: {
  readonly station: StationLayout;
  readonly lead: LaidDirection | undefined;
}): JSX.Element {
  const { units } = useStore();
  const system = units.value;
  const pass = lead === undefined ? undefined : station.passes[lead.passes[0] ?? -1];
  const sign = lead === undefined ? null : signDistance(lead);
  return (
    <dl class="facts">
      <Fact name="Course distance">{lead === undefined ? DASH : formatMeasure(lead.measure, system)}</Fact>
      <Fact name="Side">{`${sideWords(lead?.side ?? 'unclear')}${station.station.side === undefined ? '' : ', declared'}`}</Fact>
      {pass === undefined ? null : (
        <Fact name="Pin from the course">{`${lengthText(Math.abs(pass.offset), system)}, ${pass.side} ${percent(pass.confidence)}`}</Fact>
      )}
      <Fact name="Sign ahead of the station">{sign === null ? DASH : lengthText(sign.along, system)}</Fact>
      <Fact name="The same by wheel">
        {sign === null || sign.wheel === null ? DASH : lengthText(sign.wheel, system)}
      </Fact>
      {station.nearest === null ? null : (
        <Fact name="Nearest course">{lengthText(station.nearest.distance, system)}</Fact>
      )}
    </dl>
  );
}

function Chosen({ station, open }: { readonly station: StationLayout; readonly open: OpenPlan }): JSX.Element {
  const lead = leadOf(station);
  const findings = findingsByStation(open).get(station.id) ?? [];
  const serves = station.station.serves.map((kind) => SERVED_WORD[kind]).join(', ');
  return (
    <>
      <h2>
        {numberOf(station)} · {station.name}
      </h2>
      <StationActions station={station} open={open} />
      <p class="soft serves">Serves {serves === '' ? 'nothing' : serves}</p>
      {station.directions.map((direction, index) => (
        <section
          key={`${direction.race}-${index}`}
          aria-label={direction.lead ? 'Lead direction' : `Other direction ${index}`}
        >
          {direction.lead ? null : <h3>Other direction: runners come {comeFrom(direction.azimuthDeg)}</h3>}
          <StationSketch direction={direction} />
          {direction.lead ? <Facts station={station} lead={lead} /> : null}
          <Items direction={direction} />
        </section>
      ))}
      {lead === undefined ? <Facts station={station} lead={lead} /> : null}
      <StationEditor station={station} open={open} />
      <h3>Passes</h3>
      <Passes station={station} open={open} />
      {station.station.note === undefined && station.station.why === undefined ? null : (
        <>
          <h3>Notes</h3>
          {station.station.note === undefined ? null : <p>{station.station.note}</p>}
          {station.station.why === undefined ? null : <p>Placed so because: {station.station.why}</p>}
        </>
      )}
      <h3>Findings</h3>
      {findings.length === 0 ? <p class="soft">No findings for this station.</p> : null}
      <ul class="findings">
        {findings.map((finding, index) => (
          <FindingCard key={`${finding.code}-${index}`} finding={finding} station={null} />
        ))}
      </ul>
    </>
  );
}

export function StationPanel(): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  const station = open?.analysis.stations.find((one) => one.id === store.selected.value);
  if (open === null || station === undefined) {
    return (
      <div class="empty">
        <h2>No station chosen</h2>
        <p>
          Choose one in the table, on the map or on the course strip. Its items, passes and findings are shown here.
        </p>
      </div>
    );
  }
  return <Chosen station={station} open={open} />;
}
