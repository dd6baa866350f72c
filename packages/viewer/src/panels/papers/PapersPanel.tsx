/** The papers, seen as they will print, printed and saved; and the same for other tools. */
import type { PrintedPaper } from '@halfcup/core/papers';
import { batch } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { isPerStation, languages, paperNamed } from '../../papers/papers.ts';
import { chooseStation } from '../../state/view/choose.ts';
import { reasonOf } from '../../trouble.ts';
import { useStore, type OpenPlan, type Store } from '../../state/store/store.ts';
import { ExportButtons } from './ExportButtons.tsx';
import { PaperButtons, PictureButtons } from './PaperButtons.tsx';
import { numberOf } from '../../state/view/derive.ts';
import { planWithoutTrial } from '../../state/store/trial.ts';

interface Made {
  readonly papers: readonly PrintedPaper[];
  /** The paper of a name, for one station where one is asked for. */
  readonly named: typeof paperNamed;
  readonly perStation: typeof isPerStation;
  readonly languages: ReturnType<typeof languages>;
}

type Size = 'a4' | 'letter';

/** The papers for what is shown; made anew as the plan, the station or the choice changes. */
function usePapers(store: Store, paper: Size, language: string): Made | string | null {
  const [made, setMade] = useState<Made | string | null>(null);
  const [open, selected, placed] = [planWithoutTrial(store), store.selected.value, store.placed.value];
  useEffect(() => {
    let over = false;
    const make = async (): Promise<void> => {
      if (open === null) return;
      try {
        const making = await import('../../papers/papers.ts');
        const papers = await making.allPapers(open, selected, placed, {
          paper,
          language,
          printedAt: making.minuteNow(),
        });
        if (!over)
          setMade({
            papers,
            named: making.paperNamed,
            perStation: making.isPerStation,
            languages: making.languages(),
          });
      } catch (error) {
        if (!over) setMade(`The papers could not be made: ${reasonOf(error)}.`);
      }
    };
    void make();
    return () => {
      over = true;
    };
  }, [open, selected, placed, paper, language]);
  return made;
}

/** Makes the whole width of the paper seen. */
function fit(frame: HTMLIFrameElement): void {
  const page = frame.contentDocument?.documentElement;
  if (page === undefined) return;
  page.style.zoom = '1';
  page.style.zoom = String(Math.min(1, page.clientWidth / page.scrollWidth));
}

function Preview({ paper }: { readonly paper: PrintedPaper }): JSX.Element {
  const frame = useRef<HTMLIFrameElement>(null);
  useEffect(() => {
    const show = async (): Promise<void> => {
      const { showPaper } = await import('../../papers/printPaper.ts');
      if (frame.current?.isConnected !== true) return;
      showPaper(frame.current, paper.html);
      fit(frame.current);
    };
    void show();
  }, [paper.html]);
  return <iframe ref={frame} class="paper-preview" title={`${paper.title}, as it will print`} />;
}

/** Papers of one station are reached by the second box. */
const isOfOne = ({ name }: PrintedPaper): boolean => /^(?:captain|card)-\d+\.html$/u.test(name);

const PaperChoice = ({
  papers,
  chosen,
  onChoose,
}: Pick<Made, 'papers'> & {
  readonly chosen: string;
  readonly onChoose: (name: string) => void;
}): JSX.Element => (
  <label class="stack">
    Paper
    <select aria-label="Paper" value={chosen} onChange={(event) => onChoose(event.currentTarget.value)}>
      {papers
        .filter((paper) => !isOfOne(paper))
        .map((paper) => (
          <option key={paper.name} value={paper.name}>
            {paper.title}
          </option>
        ))}
    </select>
  </label>
);

/** Whose paper it is: all stations’, or that of one, which follows what is selected. */
function StationChoice({ open, station }: { readonly open: OpenPlan; readonly station: string | null }): JSX.Element {
  const store = useStore();
  const choose = (id: string): void =>
    batch(() => {
      store.paper.value = { ...store.paper.value, allWhile: id === '' ? store.selected.value : null };
      if (id !== '') chooseStation(store, id);
    });
  return (
    <label class="stack">
      Station
      <select aria-label="Station" value={station ?? ''} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="">all stations</option>
        {open.analysis.stations.map((one) => (
          <option key={one.id} value={one.id}>
            {numberOf(one)} {one.name}
          </option>
        ))}
      </select>
    </label>
  );
}

const Options = ({
  size,
  language,
  languages,
  onSize,
  onLanguage,
}: Pick<Made, 'languages'> & {
  readonly size: Size;
  readonly language: string;
  readonly onSize: (size: Size) => void;
  readonly onLanguage: (language: string) => void;
}): JSX.Element => (
  <div class="row">
    <label class="field">
      Size
      <select
        aria-label="Size"
        value={size}
        onChange={(event) => onSize(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
      >
        <option value="a4">A4</option>
        <option value="letter">US Letter</option>
      </select>
    </label>
    <label class="field">
      Language
      <select
        aria-label="Language"
        value={languages.some(({ value }) => value === language) ? language : 'en'}
        onChange={(event) => onLanguage(event.currentTarget.value)}
      >
        {languages.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </label>
  </div>
);

export function PapersPanel(): JSX.Element {
  const store = useStore();
  const open = planWithoutTrial(store);
  const [size, setSize] = useState<Size>('a4');
  const [wanted, setLanguage] = useState<string | null>(null);
  const language = wanted ?? open?.document.plan.language ?? 'en';
  const { name, allWhile } = store.paper.value;
  const selected = store.selected.value;
  const station = allWhile === selected ? null : selected;
  const made = usePapers(store, size, language);
  if (open === null) return <p class="empty">No plan is open.</p>;
  if (made === null) return <p class="empty">Making the papers…</p>;
  if (typeof made === 'string')
    return (
      <p class="empty" role="alert">
        {made}
      </p>
    );
  const index = open.analysis.stations.find(({ id }) => id === station)?.index ?? null;
  const chosen = made.named(made.papers, name, index) ?? made.papers[0]!;
  /** Made again at the press: what is printed is the plan of that minute. */
  const afresh = async (): Promise<PrintedPaper> => {
    const { allPapers, minuteNow } = await import('../../papers/papers.ts');
    const papers = await allPapers(open, store.selected.value, store.placed.value, {
      paper: size,
      language,
      printedAt: minuteNow(),
    });
    return made.named(papers, name, index) ?? chosen;
  };
  return (
    <div class="papers">
      <h2>Papers</h2>
      <PaperChoice
        papers={made.papers}
        chosen={isOfOne(chosen) ? name : chosen.name}
        onChoose={(wantedName) => (store.paper.value = { name: wantedName, allWhile })}
      />
      {made.perStation(name) ? <StationChoice open={open} station={station} /> : null}
      <Options size={size} language={language} languages={made.languages} onSize={setSize} onLanguage={setLanguage} />
      <div class="row">
        <PaperButtons open={open} afresh={afresh} />
        {chosen.name === 'overview.html' ? <PictureButtons open={open} afresh={afresh} /> : null}
      </div>
      <Preview paper={chosen} />
      <ExportButtons />
    </div>
  );
}
