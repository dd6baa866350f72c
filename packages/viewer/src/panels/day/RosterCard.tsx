/** Who is on the roster at each station beside the crew that the day needs; read from a table, kept in the plan alone. */
import type { RaceDay } from '@halfcup/core';
import { findingLine, readRoster, rosterRows } from '@halfcup/core/raceday';
import { formatMinute } from '@halfcup/core/units';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { setValue } from '../../state/edits/edits.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { firstMessage, messageOf } from '../../state/view/voice.ts';
import { textOfFile } from '../../work/textOfFile.ts';
import { RowsTold } from './RowsTold.tsx';
import { TableFileButton } from './TableFileButton.tsx';
import { grouped } from './words.ts';

interface Props {
  readonly day: RaceDay;
  readonly open: OpenPlan;
}

const ROSTER = ['people', 'crew'] as const;

/** Puts the people of a table in the place of the roster; what there is to tell of its rows. */
async function takeFile(store: Store, open: OpenPlan, file: File): Promise<readonly string[]> {
  const text = await textOfFile(file);
  const read = text.ok ? readRoster(text.value, file.name, open.analysis.plan) : text;
  const lines = read.findings.map((finding) => findingLine({ ...finding, message: messageOf(store, finding) }));
  if (!read.ok) return lines;
  const refused = run(store, setValue(ROSTER, read.value, `take the roster from ${file.name}`));
  if (refused.length > 0) return [...lines, ...refused.map((one) => messageOf(store, one))];
  const count = read.value.length;
  store.notice.value = { text: `${count === 1 ? '1 person' : `${grouped(count)} people`} taken from ${file.name}.` };
  return lines;
}

function Rows({ day, open }: Props): JSX.Element {
  const { plan, stations } = open.analysis;
  return (
    <table class="items roster-rows">
      <caption>Fewest who are there while a station serves</caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            Station
          </th>
          <th scope="col">There</th>
          <th scope="col">From</th>
          <th scope="col">Needed</th>
          <th scope="col">Missing</th>
        </tr>
      </thead>
      <tbody>
        {rosterRows(plan, day.stations).map(({ station, there, at, needed }) => (
          <tr key={station}>
            <th scope="row" class="left">
              {stations.find(({ id }) => id === station)?.name ?? station}
            </th>
            <td class="figure">{grouped(there)}</td>
            <td class="figure">{formatMinute(at)}</td>
            <td class="figure">{grouped(needed)}</td>
            <td class="figure strong">{there < needed ? grouped(needed - there) : ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function RosterCard({ day, open }: Props): JSX.Element {
  const store = useStore();
  const [told, setTold] = useState<readonly string[]>([]);
  const count = open.analysis.plan.people?.crew.length ?? 0;
  const clear = (): void => {
    const refused = run(store, setValue(['people'], undefined, 'remove the roster'));
    store.notice.value = { text: firstMessage(store, refused) ?? 'Roster removed. Undo brings it back.' };
  };
  return (
    <section class="roster" aria-labelledby="roster">
      <h3 id="roster">Roster</h3>
      <p class="soft">
        {count === 0 ? 'Nobody is on the roster yet. ' : ''}A table with name and station, and if you like role, from,
        until and phone, one row a person. Names stay in the plan’s file: maps, tables, calendars and the report leave
        them out; the sign-in sheet prints them.
      </p>
      {count === 0 ? null : <Rows day={day} open={open} />}
      <div class="button-row">
        <TableFileButton
          label="Read a roster (CSV)…"
          name="roster-file"
          take={(file) => void takeFile(store, open, file).then(setTold)}
        />
        {count === 0 ? null : (
          <button type="button" onClick={clear}>
            Remove the roster
          </button>
        )}
      </div>
      <RowsTold lines={told} />
    </section>
  );
}
