/** The stations of a plan as a list for a spreadsheet, which `readStationList` reads back. */
import type { Served } from '../kinds.ts';
import { exactText } from '../plan/exactText.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { isPlanNames } from '../plan/shapes.ts';
import { oneOf, want } from '../wants.ts';
import { type CsvCell, csvText } from './csvText.ts';

/** Languages that the heads of a list can have. */
export type ListLanguage = 'en' | 'es';

const EN =
  'id,name,course,distance,lon,lat,side,serves,water tables,sports drink tables,gel tables,boxes,width,captain,phone,radio,note';
const ES =
  'id,nombre,recorrido,distancia,longitud,latitud,lado,sirve,mesas de agua,mesas de bebida deportiva,mesas de gel,cajas,ancho,capitán,teléfono,radio,nota';
const HEADS: Readonly<Record<ListLanguage, readonly string[]>> = { en: EN.split(','), es: ES.split(',') };
const SERVED: Readonly<Record<ListLanguage, Readonly<Record<Served, string>>>> = {
  en: { water: 'water', sportsDrink: 'sports drink', gel: 'gel' },
  es: { water: 'agua', sportsDrink: 'bebida deportiva', gel: 'gel' },
};
const SIDES = { en: { left: 'left', right: 'right' }, es: { left: 'izquierda', right: 'derecha' } } as const;

/**
 * CSV (RFC 4180) with one row a station: its place by course and distance or by lon and lat, side, what it serves, its
 * tables, boxes, width, people and note. What a list does not hold, such as items placed by hand, is left out.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { stationListText } from '@halfcup/core/plan';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }], "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "name": "Mill", "on": { "course": "c", "measure": "2 km", "side": "left" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * stationListText(read.value.plan, 'en').split('\r\n')[1]; // → 's1,Mill,c,2 km,,,left,"sports drink, water",,,,,,,,,'
 * ```
 */
export function stationListText(
  plan: Pick<Plan, 'stations' | 'races' | 'courses' | 'units'>,
  language: ListLanguage,
): string {
  want('stationListText', 'plan', isPlanNames, plan);
  want('stationListText', 'language', oneOf('en', 'es'), language);
  return csvText([HEADS[language], ...plan.stations.map((station) => rowOf(station, plan.units, language))]);
}

const length = (metres: number, units: Plan['units']): string =>
  exactText(metres, units) ?? `${/e/u.test(String(metres)) ? metres.toFixed(12) : metres} m`;

function rowOf(station: PlanStation, units: Plan['units'], language: ListLanguage): readonly CsvCell[] {
  const { on, at, tables, people, width } = station;
  const side = on?.side ?? station.side;
  return [
    station.id,
    station.name,
    on?.course ?? null,
    on === undefined ? null : length(on.measure, units),
    ...(at ?? [null, null]),
    side === undefined ? null : SIDES[language][side],
    station.serves.map((kind) => SERVED[language][kind]).join(', '),
    tables.water ?? null,
    tables.sportsDrink ?? null,
    tables.gel ?? null,
    station.boxes ?? null,
    width === undefined ? null : length(width, units),
    people.captain ?? null,
    people.phone ?? null,
    people.radio ?? null,
    station.note ?? null,
  ];
}
