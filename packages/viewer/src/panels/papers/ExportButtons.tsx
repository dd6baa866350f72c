/** The layout for other tools: one button a format; what cannot be made is shown with the reason. */
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Ending } from '../../papers/papers.ts';
import { exportFile } from '../../storage/saveFile.ts';
import { reasonOf } from '../../trouble.ts';
import { messageOf } from '../../state/view/voice.ts';
import { useStore } from '../../state/store/store.ts';
import { savedName } from '../../state/view/fileNames.ts';
import { planWithoutTrial } from '../../state/store/trial.ts';

const FORMATS: readonly {
  readonly ending: Ending;
  readonly label: string;
  readonly type: `${string}/${string}`;
  readonly part: string;
}[] = [
  { ending: '.gpx', label: 'GPX for handheld devices', type: 'application/gpx+xml', part: 'stations' },
  { ending: '.geojson', label: 'GeoJSON for maps', type: 'application/geo+json', part: 'layout' },
  { ending: '.csv', label: 'CSV for spreadsheets', type: 'text/csv', part: 'layout' },
  { ending: '.ics', label: 'Calendar for crews', type: 'text/calendar', part: 'crews' },
];

export function ExportButtons(): JSX.Element {
  const store = useStore();
  const [trouble, setTrouble] = useState<string | null>(null);
  const save = async ({ ending, label, type, part }: (typeof FORMATS)[number]): Promise<void> => {
    const open = planWithoutTrial(store);
    if (open === null) return;
    const { EXPORTS } = await import('../../papers/papers.ts');
    const made = EXPORTS[ending](open);
    setTrouble('text' in made ? null : made.findings.map((finding) => messageOf(store, finding)).join(' '));
    if ('text' in made)
      await exportFile(store, savedName(open, part, ending), new Blob([made.text], { type }), [label, type, ending]);
  };
  return (
    <section aria-labelledby="exports">
      <h2 id="exports">For other tools</h2>
      <div class="row">
        {FORMATS.map((format) => (
          <button
            key={format.ending}
            type="button"
            onClick={() =>
              void save(format).catch((error: unknown) =>
                setTrouble(`${format.label} could not be made: ${reasonOf(error)}.`),
              )
            }
          >
            {format.label}
          </button>
        ))}
      </div>
      {trouble === null ? null : (
        <p class="entry-trouble" role="alert">
          {trouble}
        </p>
      )}
    </section>
  );
}
