/** Race day at the selected station, and at all of them. */
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import { DayTable } from './DayTable.tsx';
import { RaceDayRuns } from './RaceDayRuns.tsx';
import { RaceDayTotals } from './RaceDayTotals.tsx';
import { StationDayView } from './StationDayView.tsx';

export function RaceDayPanel(): JSX.Element {
  const store = useStore();
  const open = store.open.value;
  if (open === null) return <p class="empty">No plan is open.</p>;
  const { day, stations } = open.analysis;
  if (day === null) {
    return (
      <div class="empty">
        <h2>Nobody runs yet</h2>
        <p>
          Race day is reckoned from the races’ starters. Add to a race in the plan its waves, each with its time and
          entrants, and its finish times: a median with a spread, quantiles, or past results.
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
          <p class="soft">Choose a station for its arrivals, cups, crew and supplies.</p>
        </>
      )}
      <p class="soft">Each stays open until race control releases it, whatever the time.</p>
      <div class="day-all">
        <DayTable day={day} open={open} />
      </div>
      <RaceDayTotals day={day} />
      <RaceDayRuns day={day} open={open} />
    </div>
  );
}
