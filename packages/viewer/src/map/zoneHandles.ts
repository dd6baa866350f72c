/** The handles of a zone that is reshaped: its corners, the middles of its edges, and one for the whole. */
import type { LonLat } from '@halfcup/core';
import type { OpenPlan, Store } from '../state/store/store.ts';
import {
  between,
  cornersOf,
  LEAST_CORNERS,
  middleOf,
  movedBy,
  reshapeZone,
  shifted,
  zoneName,
  type Corners,
} from '../state/edits/zones.ts';
import { run } from '../state/edits/workbench.ts';
import { firstMessage } from '../state/view/voice.ts';
import type { Handle } from './gestures/handles.ts';

interface Reshaping {
  readonly store: Store;
  readonly open: OpenPlan;
  readonly zone: number;
  readonly corners: Corners;
}

/** Writes the corners into the plan: one step of undo, or by keys one with those before. */
function write({ store, open, zone }: Reshaping, corners: Corners, keys: boolean): void {
  const message = firstMessage(
    store,
    run(store, reshapeZone(open, zone, corners, keys ? `reshape zone ${zone}` : undefined)),
  );
  if (message !== null) store.notice.value = { text: message };
  const { value: tool } = store.tool;
  if (tool?.kind === 'reshape') store.tool.value = { ...tool, corners: null };
}

function preview({ store, zone }: Reshaping, corners: Corners | null): void {
  store.tool.value = { kind: 'reshape', zone, corners };
}

/** A handle whose place decides the corners. */
const handleOf = (
  given: Reshaping,
  { corners, ...rest }: Omit<Handle, 'pull' | 'step' | 'drop'> & { readonly corners: (to: LonLat) => Corners },
): Handle => ({
  ...rest,
  pull: (to, done) => (done ? write(given, corners(to), false) : preview(given, corners(to))),
  step: (east, north) => write(given, corners(shifted(rest.at, east, north)), true),
  drop: () => preview(given, null),
});

function cornerHandle(given: Reshaping, index: number, name: string): Handle {
  const { corners } = given;
  const at = corners[index]!;
  return handleOf(given, {
    key: `corner-${index}`,
    kind: 'corner',
    at,
    label: `Corner ${index + 1} of ${name}. Arrow keys move it, Delete removes it.`,
    corners: (to) => corners.with(index, to),
    remove: () => {
      if (corners.length > LEAST_CORNERS) write(given, corners.toSpliced(index, 1), false);
      else given.store.notice.value = { text: 'A zone needs three corners.' };
    },
  });
}

function middleHandle(given: Reshaping, index: number, name: string): Handle {
  const { corners } = given;
  const at = between(corners[index]!, corners[(index + 1) % corners.length]!);
  const inserted = (to: LonLat): Corners => corners.toSpliced(index + 1, 0, to);
  return handleOf(given, {
    key: `middle-${index}`,
    kind: 'middle',
    at,
    label: `Add a corner after corner ${index + 1} of ${name}`,
    corners: inserted,
    press: () => write(given, inserted(at), false),
  });
}

/** None while no zone is reshaped. They stand where the zone was, but for the one that is pulled. */
export function zoneHandles(store: Store): readonly Handle[] {
  const [tool, open] = [store.tool.value, store.open.value];
  const zone = tool?.kind === 'reshape' ? open?.document.plan.zones[tool.zone] : undefined;
  if (open === null || tool?.kind !== 'reshape' || zone === undefined) return [];
  const given: Reshaping = { store, open, zone: tool.zone, corners: cornersOf(zone) };
  const { corners } = given;
  const name = zoneName(open.document.plan, tool.zone);
  const middle = middleOf(corners);
  return [
    ...corners.map((_, index) => cornerHandle(given, index, name)),
    ...corners.map((_, index) => middleHandle(given, index, name)),
    handleOf(given, {
      key: 'whole',
      kind: 'whole',
      at: middle,
      label: `Move ${name}. Arrow keys move it.`,
      corners: (to) => movedBy(corners, middle, to),
    }),
  ];
}
