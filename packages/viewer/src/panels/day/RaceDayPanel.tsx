/** Race day at the selected station, and at all of them. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { openPlanSection } from '../ui/openPlanSection.ts';
import { DayMultiples } from './DayMultiples.tsx';
import { DayTable } from './DayTable.tsx';
import { LearningCard } from './LearningCard.tsx';
import { RaceDayRuns } from './RaceDayRuns.tsx';
import { RaceDayTotals } from './RaceDayTotals.tsx';
import { RosterCard } from './RosterCard.tsx';
import { StationDayView } from './StationDayView.tsx';

export function RaceDayPanel(): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  if (open === null) return <p class="empty">No plan is open.</p>;
  const { day, stations } = open.analysis;
  if (day === null) {
    return (
      <div class="empty">
        <h2>No runners yet</h2>
        <p>In Plan › Races, add each wave’s start time and number of runners, and expected finish times.</p>
        <p>
          <button type="button" onClick={() => openPlanSection(store, 'races')}>
            Open Plan › Races
          </button>
        </p>
      </div>
    );
  }
  const station = stations.find(({ id }) => id === store.selected.value);
  const own = day.stations.find(({ id }) => id === station?.id);
  const chosen = station !== undefined && own !== undefined;
  return (
    <div class="day">
      {chosen ? (
        <>
          <StationDayView station={station} own={own} day={day} open={open} />
          <h3>All stations</h3>
        </>
      ) : (
        <>
          <h2>All stations</h2>
          <p class="soft">Choose a station to see its arrivals, cups, crew and supplies.</p>
        </>
      )}
      <p class="soft">Every station stays open until race control releases it, whatever the time here.</p>
      <DayMultiples day={day} open={open} />
      <div class="day-all">
        <DayTable day={day} open={open} />
      </div>
      <RaceDayTotals day={day} />
      <RaceDayRuns day={day} open={open} />
      <RosterCard day={day} open={open} />
      <LearningCard day={day} open={open} />
    </div>
  );
}
