/** What can be done at a place of the map: opened by the other button of the mouse, a long press, or Enter on the map. */
import type { StationLayout } from '@halfcup/core';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { crossOver, other, pinSide } from '../../state/edits/cross.ts';
import { moveStation } from '../../state/edits/edits.ts';
import { addOnCourse, duplicate, remove } from '../../state/edits/moves.ts';
import { freePlacement } from '../../state/edits/placing.ts';
import { applyRemedy, remediesOf } from '../../state/edits/remedies.ts';
import { run } from '../../state/edits/workbench.ts';
import { deleteZone, zoneAt, zoneName } from '../../state/edits/zones.ts';
import { useStore, type MapMenu as Menu, type OpenPlan, type Store } from '../../state/store/store.ts';
import { chooseStation } from '../../state/view/choose.ts';
import { findingsByStation, numberOf } from '../../state/view/derive.ts';
import { ask } from '../../state/view/place.ts';
import { firstMessage } from '../../state/view/voice.ts';

interface Item {
  readonly label: string;
  readonly act: () => void;
}

/** As an item that says what has come of it. */
const edit = (store: Store, label: string, act: () => ReturnType<typeof run>, done: string): Item => ({
  label,
  act: () => {
    store.notice.value = { text: firstMessage(store, act()) ?? `${done} Undo reverts this.` };
  },
});

function ofStation(store: Store, open: OpenPlan, station: StationLayout): Item[] {
  const { id, name } = station;
  const to = other(pinSide(station));
  const remedies = (findingsByStation(open).get(id) ?? []).flatMap((finding) =>
    remediesOf(open, finding, store.units.value),
  );
  return [
    { label: `Show ${numberOf(station)} · ${name}`, act: () => chooseStation(store, id) },
    ...remedies.map((remedy) => ({
      label: remedy.label,
      act: () => {
        const applied = applyRemedy(store, remedy);
        store.notice.value = { text: 'refused' in applied ? applied.refused : `${applied.done} Undo reverts this.` };
      },
    })),
    ...(station.passes.length === 0
      ? []
      : [edit(store, `Move to the ${to}-hand side`, () => crossOver(store, id), `${name} moved.`)]),
    edit(store, `Duplicate ${name}`, () => duplicate(store, id), `Added a copy of ${name}.`),
    edit(store, `Delete ${name}`, () => remove(store, id), `${name} deleted.`),
  ];
}

function ofPlace(store: Store, open: OpenPlan, { at, place }: Menu): Item[] {
  const selected = open.analysis.stations.find(({ id }) => id === store.selected.value);
  const move = (station: StationLayout): Item =>
    edit(
      store,
      `Move ${station.name} here`,
      () =>
        run(
          store,
          moveStation(
            station.id,
            station.name,
            freePlacement(open.analysis, station, at),
            place === null ? null : place.side,
          ),
        ),
      `${station.name} moved.`,
    );
  return [
    ...(place === null
      ? []
      : [
          edit(
            store,
            `Add a station here, ${place.side}-hand side`,
            () => addOnCourse(store, place.course, place.measure, place.side),
            'Added a station.',
          ),
          { label: 'Where is this?', act: () => ask(store, { course: place.course, measure: place.measure }) },
        ]),
    ...(selected === undefined ? [] : [move(selected)]),
  ];
}

function ofZone(store: Store, open: OpenPlan, zone: number): Item[] {
  const name = zoneName(open.document.plan, zone);
  return [
    { label: `Reshape ${name}`, act: () => void (store.tool.value = { kind: 'reshape', zone, corners: null }) },
    edit(store, `Delete ${name}`, () => run(store, deleteZone(open, zone)), `${name} deleted.`),
  ];
}

function itemsOf(store: Store, open: OpenPlan, menu: Menu): Item[] {
  const station = open.analysis.stations.find(({ id }) => id === menu.station);
  const zone = zoneAt(open.document.plan, menu.at);
  return [
    ...(station === undefined ? ofPlace(store, open, menu) : ofStation(store, open, station)),
    ...(zone === null ? [] : ofZone(store, open, zone)),
    { label: 'Measure from here', act: () => void (store.tool.value = { kind: 'measure', points: [menu.at] }) },
    { label: 'Draw a zone from here', act: () => void (store.tool.value = { kind: 'draw', corners: [menu.at] }) },
  ];
}

/** Width and height of an item, pixels: the menu opens to where it has room. */
const WIDTH = 250;
const HEIGHT = 34;

function Opened({ open, menu }: { readonly open: OpenPlan; readonly menu: Menu }): JSX.Element {
  const store = useStore();
  const list = useRef<HTMLDivElement>(null);
  const items = itemsOf(store, open, menu);
  const buttons = (): HTMLButtonElement[] => [...(list.current?.querySelectorAll('button') ?? [])];
  const close = (): void => {
    store.menu.value = null;
    list.current?.closest('.map-pane')?.querySelector('canvas')?.focus({ preventScroll: true });
  };
  useEffect(() => {
    buttons()[0]?.focus({ preventScroll: true });
    const outside = (event: PointerEvent): void => {
      if (!(event.target as HTMLElement).closest('.map-menu')) store.menu.value = null;
    };
    window.addEventListener('pointerdown', outside, true);
    return () => window.removeEventListener('pointerdown', outside, true);
  }, [menu]);
  const press = (event: KeyboardEvent): void => {
    const all = buttons();
    const at = all.indexOf(document.activeElement as HTMLButtonElement);
    const to =
      event.key === 'ArrowDown'
        ? (at + 1) % all.length
        : event.key === 'ArrowUp'
          ? (at - 1 + all.length) % all.length
          : event.key === 'Home'
            ? 0
            : event.key === 'End'
              ? all.length - 1
              : null;
    if (to !== null) all[to]?.focus();
    else if (event.key === 'Escape' || event.key === 'Tab') close();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const left = `max(4px, min(${menu.x}px, 100% - ${WIDTH + 4}px))`;
  const top = `max(4px, min(${menu.y}px, 100% - ${items.length * HEIGHT + 12}px))`;
  return (
    <div ref={list} class="map-menu" role="menu" aria-label="At this place" style={{ left, top }} onKeyDown={press}>
      {items.map(({ label, act }) => (
        <button
          key={label}
          type="button"
          role="menuitem"
          tabindex={-1}
          onClick={() => {
            close();
            act();
          }}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

export function MapMenu(): JSX.Element | null {
  const store = useStore();
  const [open, menu] = [store.open.value, store.menu.value];
  return open === null || menu === null ? null : <Opened open={open} menu={menu} />;
}
