/** The page: what stands where, on a wide screen and on a narrow one. */
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { MapPane } from '../../map/MapPane.tsx';
import { isOpen } from '../../state/view/derive.ts';
import { useStore } from '../../state/store/store.ts';
import { handlesOf } from '../../storage/pickers.ts';
import { CourseStrip } from '../../strip/CourseStrip.tsx';
import { Credit } from '../background/Credit.tsx';
import { Caution } from './Caution.tsx';
import { FoldButton } from '../ui/FoldButton.tsx';
import { JobLine } from '../ui/JobLine.tsx';
import { NoticeLine } from '../ui/NoticeLine.tsx';
import { PapersPanel } from '../papers/PapersPanel.tsx';
import { MapFindings } from '../review/MapFindings.tsx';
import { MapMenu } from '../place/MapMenu.tsx';
import { Patterns } from './Patterns.tsx';
import { PlaceCard } from '../place/PlaceCard.tsx';
import { PlanPanel } from '../plan/PlanPanel.tsx';
import { Problems } from './Problems.tsx';
import { RaceDayPanel } from '../day/RaceDayPanel.tsx';
import { ReviewPanel } from '../review/ReviewPanel.tsx';
import { RoadPanel } from '../road/RoadPanel.tsx';
import { ArrivedSheet } from '../start/ArrivedSheet.tsx';
import { FirstScreen } from '../start/FirstScreen.tsx';
import { StartSheet } from '../start/StartSheet.tsx';
import { StationPanel } from '../station/StationPanel.tsx';
import { StationTable } from '../stations/StationTable.tsx';
import { Tabs, type Tab } from '../ui/Tabs.tsx';
import { ToolLine } from '../place/ToolLine.tsx';
import { TopBar } from './TopBar.tsx';
import { useKeys } from '../ui/useKeys.ts';
import { VariantsPanel } from '../variants/VariantsPanel.tsx';
import { reviewList } from '../../state/view/placed.ts';
import { takeDropped } from '../../work/placed.ts';

/** Files may be dropped anywhere on the page. */
function useDrop(): boolean {
  const store = useStore();
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
    const onOver = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      const files = [...(event.dataTransfer?.files ?? [])];
      void handlesOf(event.dataTransfer).then((handles) => takeDropped(store, files, handles));
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, [store]);
  return over;
}

const Selected = ({ folded }: { readonly folded: boolean }): JSX.Element => (
  <aside class="side-right" aria-label="Selected station" tabindex={0}>
    <div class="fold-station">
      <FoldButton part="station" name="Station panel" controls="station-box" />
    </div>
    <div id="station-box" hidden={folded}>
      <StationPanel />
    </div>
  </aside>
);

export function App(): JSX.Element {
  const store = useStore();
  const over = useDrop();
  useKeys(store);
  const narrow = store.narrow.value;
  const folds = store.folds.value;
  const open = store.open.value;
  const findings = open === null ? undefined : reviewList(open, store.placed.value).filter(isOpen).length;
  const tabs: Tab[] = [
    ...(narrow ? [{ pane: 'strip' as const, label: 'Strip', content: () => <CourseStrip /> }] : []),
    { pane: 'stations', label: 'Stations', content: () => <StationTable /> },
    { pane: 'plan', label: 'Plan', content: () => <PlanPanel /> },
    { pane: 'variants', label: 'Variants', content: () => <VariantsPanel /> },
    {
      pane: 'review',
      label: 'Review',
      ...(findings === undefined ? {} : { count: findings }),
      content: () => <ReviewPanel />,
    },
    { pane: 'day', label: 'Race day', content: () => <RaceDayPanel /> },
    { pane: 'papers', label: 'Papers', content: () => <PapersPanel /> },
    { pane: 'road', label: 'On the road', content: () => <RoadPanel /> },
    ...(narrow ? [{ pane: 'station' as const, label: 'Station', content: () => <StationPanel /> }] : []),
  ];
  return (
    <div class={['page', over ? 'dropping' : '', ...[...folds].map((part) => `folded-${part}`)].join(' ')}>
      <TopBar />
      <section class="side-left" aria-label="Plan">
        <Problems />
        <Tabs tabs={tabs} label="Plan" />
      </section>
      <MapPane over={<MapMenu />}>
        <Credit />
        <MapFindings />
        <ToolLine />
        <PlaceCard />
        <JobLine />
        <NoticeLine />
      </MapPane>
      {narrow ? null : <Selected folded={folds.has('station')} />}
      {narrow ? null : <CourseStrip />}
      <FirstScreen />
      <StartSheet />
      <ArrivedSheet />
      <Caution />
      <Patterns />
      {over ? (
        <p class="drop-note" role="status">
          {open !== null && store.pane.value === 'review'
            ? 'Drop a GPX file of points recorded on the ground, or a plan with its GPX files'
            : 'Drop GPX courses, a plan with its GPX files, a packed plan (ZIP), or a map of streets (.osm, .osm.pbf, .geojson)'}
        </p>
      ) : null}
    </div>
  );
}
