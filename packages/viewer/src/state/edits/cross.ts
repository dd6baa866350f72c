/** Sends a station across the course: to the other side at the same distance, with that side declared. */
import type { Finding, StationLayout } from '@halfcup/core';
import { moveStation, type Command } from './edits.ts';
import { alongPlacement, leadOffsetLine, type Placement } from './placing.ts';
import type { OpenPlan, Store } from '../store/store.ts';
import { run } from './workbench.ts';

export type Way = 'left' | 'right';

export const other = (side: Way): Way => (side === 'left' ? 'right' : 'left');

/** The side on which the pin stands by geometry, as the lead direction's runners see it. */
export function pinSide(station: StationLayout): Way {
  const line = leadOffsetLine(station);
  return line !== null && line.offset < 0 ? 'right' : 'left';
}

function across(open: OpenPlan, station: StationLayout, side: Way): Placement | null {
  const line = leadOffsetLine(station);
  return line === null ? null : alongPlacement(open.analysis, station, line, line.measure, side);
}

/** Across the course to a side, with that side declared; `null` where it stands there already or no course passes it. */
export function crossing(open: OpenPlan, station: StationLayout, to: Way): Command | null {
  const placement = to === pinSide(station) ? null : across(open, station, to);
  return placement === null ? null : moveStation(station.id, station.name, placement, to);
}

/** To `side`, or to the side on which it does not stand; nothing where no course passes it. */
export function crossOver(store: Store, id: string, side?: Way): readonly Finding[] {
  const open = store.open.value;
  const station = open?.analysis.stations.find((one) => one.id === id);
  if (open === null || station === undefined) return [];
  const command = crossing(open, station, side ?? other(pinSide(station)));
  return command === null ? [] : run(store, command);
}
