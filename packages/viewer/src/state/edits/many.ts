/** Commands over many stations at once, each one step of undo, and the numbers that a plan keeps. */
import type { StationLayout } from '@halfcup/core';
import type { Served } from '@halfcup/core/plan';
import { numberOf } from '../view/derive.ts';
import type { OpenPlan } from '../store/store.ts';
import { counted, SERVED_WORD } from '../../words.ts';
import { crossing, type Way } from './cross.ts';
import { deleteStation, setOfStation, setValue, together, type Command, type Path } from './edits.ts';

const named = (stations: readonly StationLayout[]): string =>
  stations.length === 1 ? stations[0]!.name : counted(stations.length, 'station');

/** Sets a value of each. `undefined` leaves it to the rules. */
export const setForAll = (stations: readonly StationLayout[], path: Path, value: unknown, what: string): Command =>
  together(
    `${what}, ${named(stations)}`,
    stations.map(({ id }) => setOfStation(id, path, value, '')),
  );

/** Has each stand on a side: those of the other side go across the course, at the same distance. */
export const sideForAll = (open: OpenPlan, stations: readonly StationLayout[], side: Way): Command =>
  together(
    `set the side, ${named(stations)}`,
    stations.map((station) => crossing(open, station, side) ?? setOfStation(station.id, ['side'], side, '')),
  );

/** Adds a kind to what each serves, or takes it away; what they serve beside stays. */
export const serveForAll = (stations: readonly StationLayout[], kind: Served, on: boolean): Command =>
  together(
    `${on ? 'serve' : 'stop serving'} ${SERVED_WORD[kind]}, ${named(stations)}`,
    stations.map((station) => {
      const rest = station.station.serves.filter((one) => one !== kind);
      return setOfStation(station.id, ['serves'], on ? [...rest, kind] : rest, '');
    }),
  );

export const deleteAll = (stations: readonly StationLayout[]): Command =>
  together(
    `delete ${named(stations)}`,
    stations.map(({ id, name }) => deleteStation(id, name)),
  );

/** Keeps the numbers that the stations have now, or has all follow the course again. */
export const keepNumbers = (open: OpenPlan, on: boolean): Command =>
  on
    ? setValue(
        ['numbers'],
        Object.fromEntries(
          open.analysis.stations
            .toSorted((a, b) => numberOf(a) - numberOf(b))
            .map((station) => [station.id, numberOf(station)]),
        ),
        'keep the numbers of stations',
      )
    : setValue(['numbers'], undefined, 'number stations along the course');
