/** Changes of a plan's text, each a command with the words by which undo names it. */
import { editPlan } from '@halfcup/core';
import { lengthLike } from '@halfcup/core/stages';
import type { PlanDocument } from '@halfcup/core';
import { keep } from '../view/derive.ts';
import { nameAfterMove } from './autoName.ts';
import type { Placement } from './placing.ts';
import type { OpenPlan } from '../store/store.ts';

export interface Command {
  /** As undo names it: "move Strand Road". */
  readonly label: string;
  /** The plan's text after it. */
  readonly edit: (open: OpenPlan) => string;
  /** Commands that follow one another with the same key are one step of undo. */
  readonly merge?: string;
}

type Entry = Readonly<Record<string, unknown>>;
export type Path = readonly (string | number)[];

/** The plan as its file has it, units and all. */
export const rawPlan: (document: PlanDocument) => Entry = keep(
  (document) => JSON.parse(document.text.replace(/^\uFEFF/u, '')) as Entry,
);

export const pointerTo = (path: Path): string =>
  path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** The value at a path of the file's own value; `undefined` where there is none. */
export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (one, part) =>
      typeof one === 'object' && one !== null && Object.hasOwn(one, part)
        ? (one as Record<string | number, unknown>)[part]
        : undefined,
    value,
  );
}

/** A copy of a value with the value at a path set, or taken away with `undefined`; missing parents become objects. */
function withValue(value: unknown, path: Path, to: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return to;
  if (Array.isArray(value))
    return value.map((one: unknown, index) => (index === Number(key) ? withValue(one, rest, to) : one));
  const entry = typeof value === 'object' && value !== null ? (value as Entry) : {};
  const next = withValue(entry[key], rest, to);
  return Object.fromEntries([
    ...Object.entries(entry).filter(([name]) => name !== String(key)),
    ...(next === undefined ? [] : [[String(key), next] as const]),
  ]);
}

const index = (open: OpenPlan, station: string): number =>
  open.document.plan.stations.findIndex(({ id }) => id === station);
export const variantAt = (open: OpenPlan): number =>
  open.document.plan.variants.findIndex(({ name }) => name === open.variant);

/** A station as the file has it, with the variant shown laid over. */
export function rawStation(open: OpenPlan, station: string): Entry {
  const raw = rawPlan(open.document);
  const own = (valueAt(raw, ['stations', index(open, station)]) ?? {}) as Entry;
  const patch =
    open.variant === null ? {} : ((valueAt(raw, ['variants', variantAt(open), 'stations', station]) ?? {}) as Entry);
  const dropped = patch['at'] !== undefined ? 'on' : patch['on'] !== undefined ? 'at' : '';
  return { ...Object.fromEntries(Object.entries(own).filter(([key]) => key !== dropped)), ...patch };
}

/** Sets a value of the plan, in the file's own shape; `undefined` takes it away. */
export const setValue = (path: Path, value: unknown, label: string, merge?: string): Command => ({
  label,
  edit: ({ document }) =>
    value === undefined && valueAt(rawPlan(document), path) === undefined
      ? document.text
      : editPlan(document.text, pointerTo(path), value),
  ...(merge === undefined ? {} : { merge }),
});

/** Several commands as one step; each sees the text that the one before has left. */
export const together = (label: string, commands: readonly Command[], merge?: string): Command => ({
  label,
  edit: (open) => commands.reduce((text, command) => command.edit(withText(open, text)), open.document.text),
  ...(merge === undefined ? {} : { merge }),
});

const withText = (open: OpenPlan, text: string): OpenPlan => ({ ...open, document: { ...open.document, text } });

/** Sets a value of a station: of the plan's own, or where a variant is shown of that variant. `path` begins with a station's key. */
export function setOfStation(station: string, path: Path, value: unknown, label: string, merge?: string): Command {
  return {
    label,
    edit: (open) => {
      if (open.variant === null) return setValue(['stations', index(open, station), ...path], value, label).edit(open);
      const [key = '', ...rest] = path;
      const whole = rest.length === 0 ? value : withValue(rawStation(open, station)[key], rest, value);
      return setValue(['variants', variantAt(open), 'stations', station, key], whole, label).edit(open);
    },
    ...(merge === undefined ? {} : { merge }),
  };
}

/** A placement in the form in which the file has the station. */
function placingCommands(open: OpenPlan, station: string, placement: Placement): Command[] {
  const raw = rawStation(open, station);
  const other = 'at' in placement ? 'on' : 'at';
  const away = raw[other] === undefined ? [] : [setOfStation(station, [other], undefined, '')];
  if ('at' in placement) return [...away, setOfStation(station, ['at'], placement.at, '')];
  const { course, measure, side, offset } = placement.on;
  const before = (raw['on'] ?? {}) as Entry;
  const same = open.analysis.plan.stations[index(open, station)]?.on;
  // An offset that the file leaves to the practice stays left to it.
  const written =
    same !== undefined && Math.abs(same.offset - offset) < 0.005
      ? before['offset'] === undefined
        ? {}
        : { offset: before['offset'] }
      : { offset: lengthLike(before['offset'], offset) };
  return [
    ...away,
    setOfStation(
      station,
      ['on'],
      { ...before, course, measure: lengthLike(before['measure'], measure), side, ...written },
      '',
    ),
  ];
}

/** Moves a station, and declares the side on which it now stands (`null`: leaves what is declared). */
export const moveStation = (
  station: string,
  name: string,
  placement: Placement,
  side: 'left' | 'right' | null,
  merge?: string,
): Command => ({
  label: `move ${name}`,
  edit: (open) => {
    // A variant has places of its own, not names.
    const called = open.variant === null ? nameAfterMove(open, station, placement) : null;
    return together('', [
      ...placingCommands(open, station, placement),
      ...(side === null ? [] : [setOfStation(station, ['side'], side, '')]),
      ...(called === null || called === name ? [] : [setOfStation(station, ['name'], called, '')]),
    ]).edit(open);
  },
  ...(merge === undefined ? {} : { merge }),
});

/** Adds a station at the end of the plan, in every variant. */
export const addStation = (id: string, name: string, placement: Placement, side: 'left' | 'right' | null): Command =>
  setValue(['stations', '-'], { id, name, ...placement, ...(side === null ? {} : { side }) }, `add ${name}`);

/** A second station like one that there is, at another place, `more` laid over it; what belongs to its own ground stays behind. */
export const duplicateStation = (
  station: string,
  id: string,
  name: string,
  placement: Placement,
  more: Entry = {},
): Command => ({
  label: `add ${name}`,
  edit: (open) => {
    const {
      at: _at,
      on: _on,
      items: _items,
      points: _points,
      walked: _walked,
      used: _used,
      why: _why,
      lead: _lead,
      ...rest
    } = rawStation(open, station);
    return setValue(['stations', '-'], { ...rest, id, name, ...placement, ...more }, '').edit(open);
  },
});

/** Takes a station away, with its kept number, and the waivers and the places in variants that name it. */
export const deleteStation = (station: string, name: string): Command => ({
  label: `delete ${name}`,
  edit: (open) => {
    const { plan } = open.document;
    const variants = plan.variants.flatMap((variant, at) =>
      Object.hasOwn(variant.stations, station) ? [setValue(['variants', at, 'stations', station], undefined, '')] : [],
    );
    const waivers = plan.waivers
      .flatMap((waiver, at) => (waiver.station === station ? [setValue(['waivers', at], undefined, '')] : []))
      .reverse();
    const number = Object.hasOwn(plan.numbers ?? {}, station) ? [setValue(['numbers', station], undefined, '')] : [];
    return together('', [
      ...variants,
      ...waivers,
      ...number,
      setValue(['stations', index(open, station)], undefined, ''),
    ]).edit(open);
  },
});
