/** The leftover forms of all stations as one table: taken away empty, brought back filled in. */
import type { RaceDay } from '@halfcup/core';
import { leftoversCsv } from '@halfcup/core/papers';
import { findingLine, readLeftovers } from '@halfcup/core/raceday';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { countUsed } from '../../state/edits/year.ts';
import { run } from '../../state/edits/workbench.ts';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { exportFile } from '../../storage/saveFile.ts';
import { messageOf } from '../../state/view/voice.ts';
import { textOfFile } from '../../work/textOfFile.ts';
import { RowsTold } from './RowsTold.tsx';
import { TableFileButton } from './TableFileButton.tsx';

interface Props {
  readonly day: RaceDay;
  readonly open: OpenPlan;
}

/** Takes what a table has in; what there is to tell of its rows. */
async function takeFile(store: Store, { day, open }: Props, file: File): Promise<readonly string[]> {
  const text = await textOfFile(file);
  const read = text.ok ? readLeftovers(text.value, file.name, open.analysis.plan, day.stations) : text;
  const lines = read.findings.map((finding) => findingLine({ ...finding, message: messageOf(store, finding) }));
  if (!read.ok) return lines;
  const refused = run(store, countUsed(`count what was used, ${file.name}`, read.value));
  if (refused.length > 0) return [...lines, ...refused.map((one) => messageOf(store, one))];
  const count = read.value.length;
  store.notice.value = {
    text: `Counts of ${count === 1 ? '1 station' : `${count} stations`} taken from ${file.name}.`,
  };
  return lines;
}

export function LeftoversFile(props: Props): JSX.Element {
  const store = useStore();
  const [told, setTold] = useState<readonly string[]>([]);
  const { day, open } = props;
  const give = (): void =>
    void exportFile(store, 'leftovers.csv', new Blob([leftoversCsv(open.analysis.plan, day.stations)]), [
      'Leftover form',
      'text/csv',
      '.csv',
    ]);
  return (
    <>
      <div class="button-row">
        <button type="button" onClick={give}>
          Save the empty form (CSV)
        </button>
        <TableFileButton
          label="Read a filled-in form…"
          name="leftovers-file"
          take={(file) => void takeFile(store, props, file).then(setTold)}
        />
      </div>
      <RowsTold lines={told} />
    </>
  );
}
