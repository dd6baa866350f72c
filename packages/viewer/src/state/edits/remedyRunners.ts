/** Remedies of whom the tables are for, who is served, and on which side of the road they stand. */
import type { StationLayout } from '@halfcup/core';
import type { StationPass } from '@halfcup/core/stages';
import { farText, ordinal } from '../../words.ts';
import { leadOf } from '../view/derive.ts';
import type { OpenPlan } from '../store/store.ts';
import { duplicateStation, moveStation, setOfStation, together, type Command } from './edits.ts';
import { freeId } from './freeId.ts';
import { alongPlacement, leadOffsetLine } from './placing.ts';
import { listed, remedy, type FoundAt, type Remedy } from './remedy.ts';

type Way = 'left' | 'right';

interface PassChoice {
  readonly race: string;
  readonly pass: number;
}

type Served = 'as before' | readonly PassChoice[];

interface PassAt {
  readonly race: string;
  readonly measure: number;
}

const nameOf = ({ analysis }: OpenPlan, race: string): string =>
  analysis.plan.races.find(({ id }) => id === race)?.name ?? race;

const declare = ({ id, name }: StationLayout, side: Way): Command =>
  setOfStation(id, ['side'], side, `tables on the ${side}, ${name}`);

const tablesOn = (station: StationLayout, side: Way, why: string): Remedy =>
  remedy(`Tables on the ${side}${why}`, `The tables are on the ${side}.`, declare(station, side));

export const sideUnclear = ({
  station,
  params: { other },
}: FoundAt<{ readonly other: readonly PassAt[] | null }>): readonly Remedy[] =>
  other === null ? [tablesOn(station, 'left', ''), tablesOn(station, 'right', '')] : [];

/** The pin straight across the course, on its declared side. */
function pinTo(open: OpenPlan, station: StationLayout, side: Way): readonly Remedy[] {
  const line = leadOffsetLine(station);
  const placement = line === null ? null : alongPlacement(open.analysis, station, line, line.measure, side);
  return placement === null
    ? []
    : [
        remedy(
          `Move the pin to the ${side}`,
          `The pin is on the ${side}.`,
          moveStation(station.id, station.name, placement, null),
        ),
      ];
}

/** Who is served where another pass leads: a list of one is of that pass then. `null` where a list leaves open what is meant. */
function servedBy({ station: { passes } }: StationLayout, lead: PassChoice): Served | null {
  if (typeof passes === 'string' || passes.some(({ race, pass }) => race === lead.race && pass === lead.pass))
    return 'as before';
  return passes.length === 1 ? [lead] : null;
}

/** Lays the tables out for the runners of a pass. */
function leadBy(
  { open, station, units }: FoundAt<unknown>,
  { race, measure }: PassAt,
  confirm: boolean,
): readonly Remedy[] {
  const { id, name, passes } = station;
  const pass = passes.find((one) => one.race === race && one.measure === measure);
  const lead = pass === undefined ? undefined : { race, pass: pass.pass };
  const served = lead === undefined ? null : servedBy(station, lead);
  if (lead === undefined || served === null) return [];
  const who = `${nameOf(open, race)} at ${farText(measure, units)}`;
  const command = together(`change the first way past, ${name}`, [
    setOfStation(id, ['lead'], lead, ''),
    ...(served === 'as before' ? [] : [setOfStation(id, ['passes'], served, '')]),
  ]);
  const label = confirm ? `Confirm: the tables are for ${who}` : `Lay the tables out for ${who}`;
  const time = lead.pass > 0 ? `, the ${ordinal(lead.pass + 1)} time past` : '';
  return [remedy(label, `The tables are for ${who}${time}.`, command)];
}

export function sideContradicted(
  given: FoundAt<{
    readonly declared: Way;
    readonly side: Way;
    readonly fits: PassAt | null;
    readonly turned: unknown;
  }>,
): readonly Remedy[] {
  const { open, station, params } = given;
  if (params.turned !== null) return [];
  const byPin = tablesOn(station, params.side, ', by the pin');
  return params.fits === null
    ? [byPin, ...pinTo(open, station, params.declared)]
    : [...leadBy(given, params.fits, false), byPin];
}

export const leadFar = (
  given: FoundAt<{ readonly pass: PassAt; readonly taken: 'pin' | 'side' | null }>,
): readonly Remedy[] => leadBy(given, given.params.pass, given.params.taken !== null);

const chosen = ({ race, pass }: StationPass): PassChoice => ({ race, pass });

const SERVE_TOO = 'Serve them too';

export function seenNotServed({
  station,
  params,
}: FoundAt<{ readonly way: 'back' | 'other' | 'again'; readonly passes: readonly PassAt[] }>): readonly Remedy[] {
  const { id, name, passes } = station;
  const serve = (value: unknown): Command =>
    setOfStation(id, ['passes'], value, `change which runners are served, ${name}`);
  const confirm = remedy(
    'Confirm: only these are served',
    'Only the runners served now are served.',
    serve(passes.filter(({ served }) => served).map(chosen)),
  );
  const side = leadOf(station)?.side ?? 'unclear';
  const seen = params.passes.map(({ race, measure }) =>
    passes.find((one) => one.race === race && one.measure === measure),
  );
  // Tables between two flows: nobody crosses the other to reach them. On one side of both, one would.
  const between = params.way !== 'again' && side !== 'unclear' && seen.every((pass) => pass?.side === side);
  return between ? [confirm, remedy(SERVE_TOO, 'All who run past are served.', serve('all'))] : [confirm];
}

const RIGHT_ANGLE = 90;
const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

/** Who runs past the tables the way of those who are served: races, or times past that a list leaves out. */
export function passersNotServed({
  open,
  station,
  params,
}: FoundAt<{ readonly passes: readonly PassAt[] }>): readonly Remedy[] {
  const { id, name } = station;
  const { races, passes } = station.station;
  const lead = leadOf(station);
  const passers = params.passes.flatMap(({ race, measure }) =>
    station.passes.filter((one) => one.race === race && one.measure === measure),
  );
  if (lead === undefined || passers.some((pass) => apart(pass.azimuthDeg, lead.azimuthDeg) >= RIGHT_ANGLE)) return [];
  const isNew = ({ race }: StationPass): boolean => races !== undefined && !races.includes(race);
  if (typeof passes === 'string' && races !== undefined && passers.every(isNew)) {
    const added = [...new Set(passers.map(({ race }) => race))];
    const who = listed(added.map((race) => nameOf(open, race)));
    const command = setOfStation(id, ['races'], [...races, ...added], `serve ${who}, ${name}`);
    return [remedy(`Serve ${who} too`, `${who} ${added.length === 1 ? 'is' : 'are'} served too.`, command)];
  }
  if (typeof passes === 'string' || passers.some(isNew)) return [];
  const all = [...passes, ...passers.map(chosen)];
  return [remedy(SERVE_TOO, 'They are served too.', setOfStation(id, ['passes'], all, `serve all of them, ${name}`))];
}

/** Each way gets tables of its own: the station serves its first way, and one like it stands across the road for the other. */
export function tablesForEachWay({ open, station }: FoundAt<unknown>): readonly Remedy[] {
  const { id, name, directions, passes } = station;
  const [lead, other, ...more] = directions;
  if (lead === undefined || other === undefined || more.length > 0 || lead.side === 'unclear') return [];
  // A variant has no stations of its own.
  if (open.variant !== null) return [];
  const of = (direction: StationLayout['directions'][number]): StationPass[] =>
    direction.passes.map((k) => passes[k]!).filter(({ served }) => served);
  const [mine, theirs] = [of(lead), of(other)];
  const [first] = theirs;
  if (mine.length === 0 || first === undefined) return [];
  const fresh = freeId(
    's',
    open.document.plan.stations.map((one) => one.id),
  );
  const offset = station.station.on?.offset ?? station.practice.kerb;
  const on = { course: first.course, measure: first.measure, side: lead.side, offset };
  const command = together(`tables for each way, ${name}`, [
    setOfStation(id, ['passes'], mine.map(chosen), ''),
    duplicateStation(id, fresh, `${name}, other way`, { on }, { side: lead.side, passes: theirs.map(chosen) }),
  ]);
  return [
    remedy(
      'Give the other way tables across the road',
      `${name}, other way, stands on the outer side of its own runners.`,
      command,
    ),
  ];
}
