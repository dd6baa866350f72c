/**
 * Race day at the clock's time on the map. The lines of the runners stay in their source; what changes is the state of those stretches
 * whose level changes, so that a frame of the clock sends no geometry. Vehicles and sweeps are marks of the page over the map.
 */
import { Marker, type GeoJSONSource, type Map as MapLibreMap } from 'maplibre-gl';
import type { Feature, FeatureCollection } from 'geojson';
import type { LonLat } from '@halfcup/core';

export interface ClockMark {
  readonly key: string;
  readonly kind: 'sweep' | 'drop' | 'collect';
  readonly at: LonLat;
  readonly label: string;
}

/** What is shown at a time; lists are the same as before where nothing in them has changed. */
export interface ClockShown {
  readonly lines: readonly Feature[];
  /** By id of a line. */
  readonly levels: ReadonlyMap<number, number>;
  readonly phases: FeatureCollection;
  readonly marks: readonly ClockMark[];
}

export interface ClockOnMap {
  readonly put: (shown: ClockShown | null) => void;
  /** Once more, in a new style. */
  readonly again: () => void;
}

const NOTHING: ClockShown = {
  lines: [],
  levels: new Map(),
  phases: { type: 'FeatureCollection', features: [] },
  marks: [],
};

/** Pixels of a letter of a mark, and of its edges. */
const LETTER = 6.2;
const EDGES = 20;

function marksOn(map: MapLibreMap): (marks: readonly ClockMark[]) => void {
  const shown = new Map<string, { readonly marker: Marker; readonly element: HTMLElement; ends: boolean }>();
  return (marks) => {
    const gone = new Set(shown.keys());
    for (const { key, kind, at, label } of marks) {
      gone.delete(key);
      let one = shown.get(key);
      if (one === undefined) {
        const element = document.createElement('div');
        element.className = `clock-mark clock-mark-${kind}`;
        const marker = new Marker({ element, anchor: 'bottom-left' }).setLngLat([at[0], at[1]]).addTo(map);
        one = { element, marker, ends: false };
        // The same stands in words below the clock; the library takes it for a button.
        element.removeAttribute('role');
        element.removeAttribute('aria-label');
        element.removeAttribute('tabindex');
        element.setAttribute('aria-hidden', 'true');
        shown.set(key, one);
      } else one.marker.setLngLat([at[0], at[1]]);
      if (one.element.textContent !== label) one.element.textContent = label;
      // Near the right edge it stands on the left of its place.
      const wide = label.length * LETTER + EDGES;
      const ends = map.project([at[0], at[1]]).x > map.getContainer().clientWidth - wide;
      if (one.element.classList.toggle('clock-mark-ends', ends) !== one.ends) {
        one.ends = ends;
        one.marker.setOffset([ends ? -one.element.offsetWidth : 0, 0]);
      }
    }
    for (const key of gone) {
      shown.get(key)?.marker.remove();
      shown.delete(key);
    }
  };
}

/** Tells the map of stretches whose level is another than before. */
function relevel(map: MapLibreMap, before: ReadonlyMap<number, number>, after: ReadonlyMap<number, number>): void {
  for (const [id, level] of after)
    if ((before.get(id) ?? 0) !== level) map.setFeatureState({ source: 'crowd', id }, { level });
  for (const id of before.keys()) if (!after.has(id)) map.setFeatureState({ source: 'crowd', id }, { level: 0 });
}

export function clockOn(map: MapLibreMap): ClockOnMap {
  let shown = NOTHING;
  const marks = marksOn(map);
  const draw = (before: ClockShown): void => {
    const crowd = map.getSource<GeoJSONSource>('crowd');
    if (crowd === undefined) return;
    if (shown.lines !== before.lines)
      void crowd.setData({ type: 'FeatureCollection', features: shown.lines as Feature[] });
    if (shown.phases !== before.phases) void map.getSource<GeoJSONSource>('phases')?.setData(shown.phases);
    relevel(map, before.levels, shown.levels);
  };
  return {
    put: (next) => {
      const before = shown;
      shown = next ?? NOTHING;
      if (shown === before) return;
      draw(before);
      marks(shown.marks);
    },
    again: () => draw(NOTHING),
  };
}
