/** The selected station: where it is, what stands there, which runners pass, and what the checks say. */
import { type Item, type LaidDirection, type StationLayout } from '@halfcup/core';
import { type Units } from '@halfcup/core/plan';
import { type StationPass } from '@halfcup/core/stages';
import type { JSX } from 'preact';
import {
  countsOf,
  courseOf,
  findingsByStation,
  isOpen,
  leadOf,
  numberOf,
  signDistance,
  waivedOf,
} from '../../state/view/derive.ts';
import { graveFirst } from '../../state/view/grouping.ts';
import { useStore, type OpenPlan } from '../../state/store/store.ts';
import {
  comeFrom,
  DASH,
  farText,
  gradeText,
  ITEM_WORD,
  lengthText,
  SERVED_WORD,
  sideWords,
  sureText,
  timePast,
  wheelFigure,
  wheelRange,
  wheelUnit,
} from '../../words.ts';
import { gradeAtTables } from '../../strip/steep.ts';
import { CountMarks } from '../ui/CountMarks.tsx';
import { Fact } from '../ui/Fact.tsx';
import { FindingCard } from '../review/FindingCard.tsx';
import { ClockFacts } from './ClockFacts.tsx';
import { PlaceLine } from './PlaceLine.tsx';
import { StationActions } from './StationActions.tsx';
import { StationEditor } from './StationEditor.tsx';
import { StationPicture } from './StationPicture.tsx';

function Items({ direction }: { readonly direction: LaidDirection }): JSX.Element {
  const { units } = useStore();
  const order = direction.items.toSorted((a, b) => a.from - b.from);
  const margin = (item: Item): JSX.Element | null =>
    item.wheel === null || item.wheelMargin < 0.05 ? null : (
      <span class="soft wording"> ± {wheelFigure(item.wheelMargin, units.value)}</span>
    );
  return (
    <table class="items">
      <caption>{wheelUnit(units.value) === 'm' ? 'Metres' : 'Yards'} from the chalk mark (minus = before it)</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Item
          </th>
          <th scope="col">Along course</th>
          <th scope="col">By wheel</th>
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
            {timePast(pass.pass)}
          </span>
          <span class="pass-measure">{farText(pass.measure, units.value)}</span>
          <span class="pass-how">{pass.served ? 'served' : 'not served'}</span>
          <span class="pass-from">
            {comeFrom(pass.azimuthDeg)};{' '}
            {pass.side === 'unclear' ? 'side of the pin unclear' : `pin on their ${pass.side}`}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** "5 m left of the course (72 % sure)". */
function pinText({ offset, side, confidence }: StationPass, units: Units): string {
  const away = lengthText(Math.abs(offset), units);
  const sure = sureText(confidence);
  return `${away} ${side === 'unclear' ? 'from' : `${side} of`} the course${sure === '' ? '' : ` (${sure})`}`;
}

const Terms = (): JSX.Element => (
  <details class="terms">
    <summary>What pin, chalk mark and wheel mean</summary>
    <p class="soft">
      The <b>pin</b> is the point that marks the station on the map: the near end of the first drink table. The crew
      finds it on the road as a <b>chalk mark</b>, from which everything is measured. <b>By wheel</b> is what a
      measuring wheel shows that is run from there along the kerb; on a bend that differs from the distance along the
      course.
    </p>
  </details>
);

function Facts({
  station,
  lead,
  open,
}: {
  readonly station: StationLayout;
  readonly open: OpenPlan;
  readonly lead: LaidDirection | undefined;
}): JSX.Element {
  const { units } = useStore();
  const system = units.value;
  const pass = lead === undefined ? undefined : station.passes[lead.passes[0] ?? -1];
  const sign = lead === undefined ? null : signDistance(lead);
  const course = courseOf(open, lead?.course);
  const grade = lead === undefined || course === undefined ? null : gradeAtTables(course, lead.items);
  return (
    <dl class="facts">
      <Fact name="Course distance">{lead === undefined ? DASH : farText(lead.measure, system)}</Fact>
      <Fact name="Side">{`${sideWords(lead?.side ?? 'unclear')}${station.station.side === undefined ? '' : ', set by hand'}`}</Fact>
      {pass === undefined ? null : <Fact name="Pin">{pinText(pass, system)}</Fact>}
      <Fact name="Sign before the first table">{sign === null ? DASH : lengthText(sign.along, system)}</Fact>
      <Fact name="Sign distance by wheel">
        {sign === null || sign.wheel === null ? DASH : lengthText(sign.wheel, system)}
      </Fact>
      {grade === null ? null : <Fact name="Grade at the tables">{gradeText(grade)}</Fact>}
      {station.nearest === null ? null : (
        <Fact name="Nearest course">{lengthText(station.nearest.distance, system)}</Fact>
      )}
    </dl>
  );
}

function toFindings(): void {
  const heading = document.getElementById('station-findings');
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

function Chosen({ station, open }: { readonly station: StationLayout; readonly open: OpenPlan }): JSX.Element {
  const lead = leadOf(station);
  const findings = findingsByStation(open).get(station.id) ?? [];
  const listed = [...graveFirst(findings.filter(isOpen), open), ...findings.filter((finding) => !isOpen(finding))];
  const serves = station.station.serves.map((kind) => SERVED_WORD[kind]).join(', ');
  return (
    <>
      <h2>
        {numberOf(station)} · {station.name}
      </h2>
      <PlaceLine station={station} open={open} />
      {findings.length === 0 ? null : (
        <p class="station-state">
          <CountMarks counts={countsOf(findings)} waived={waivedOf(findings)} />
          <button type="button" class="link-button" onClick={toFindings}>
            See findings
          </button>
        </p>
      )}
      <StationActions station={station} open={open} />
      <ClockFacts station={station.id} open={open} />
      <p class="soft serves">Serves {serves === '' ? 'nothing' : serves}</p>
      {station.directions.map((direction, index) => (
        <section
          key={`${direction.race}-${index}`}
          aria-label={direction.lead ? 'First way past' : `Other way past, ${index}`}
        >
          {direction.lead ? null : <h3>Runners also come {comeFrom(direction.azimuthDeg)}</h3>}
          <StationPicture open={open} station={station} index={index} />
          {direction.lead ? <Facts station={station} lead={lead} open={open} /> : null}
          <Items direction={direction} />
        </section>
      ))}
      {lead === undefined ? <Facts station={station} lead={lead} open={open} /> : null}
      <Terms />
      <StationEditor station={station} open={open} />
      <h3>Runners who come past</h3>
      <Passes station={station} open={open} />
      {station.station.note === undefined && station.station.why === undefined ? null : (
        <>
          <h3>Notes</h3>
          {station.station.note === undefined ? null : <p>{station.station.note}</p>}
          {station.station.why === undefined ? null : <p>Why it is here: {station.station.why}</p>}
        </>
      )}
      <h3 id="station-findings" tabindex={-1}>
        Findings
      </h3>
      {findings.length === 0 ? <p class="soft">No problems found.</p> : null}
      <ul class="findings">
        {listed.map((finding, index) => (
          <FindingCard key={`${finding.code}-${index}`} finding={finding} subject="" heading="station-findings" />
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
          Choose one in the table, on the map or on the course strip. What stands there, who comes past and what the
          checks found are shown here.
        </p>
      </div>
    );
  }
  return <Chosen station={station} open={open} />;
}
