/** What presses on the map do while a tool is used: they draw a zone's corners, or points between which is measured. */
import type { LonLat } from '@halfcup/core';
import { run } from './workbench.ts';
import { addZone, LEAST_CORNERS, zoneName } from './zones.ts';
import type { Store } from '../store/store.ts';
import { firstMessage } from '../view/voice.ts';

/** Whether the next press is the tool's. */
export const isDrawing = (store: Store): boolean =>
  store.tool.value?.kind === 'draw' || store.tool.value?.kind === 'measure';

export function putPoint(store: Store, at: LonLat): void {
  const tool = store.tool.value;
  if (tool?.kind === 'draw') store.tool.value = { ...tool, corners: [...tool.corners, at] };
  if (tool?.kind === 'measure') store.tool.value = { ...tool, points: [...tool.points, at] };
}

export function takeLast(store: Store): void {
  const tool = store.tool.value;
  if (tool?.kind === 'draw') store.tool.value = { ...tool, corners: tool.corners.slice(0, -1) };
  if (tool?.kind === 'measure') store.tool.value = { ...tool, points: tool.points.slice(0, -1) };
}

export function endTool(store: Store): void {
  store.tool.value = null;
  store.pointer.value = null;
}

/** Ends the drawing: a zone is added, and its handles are shown; what is measured stays until the tool is put away. */
export function finishTool(store: Store): void {
  const [tool, open] = [store.tool.value, store.open.value];
  store.pointer.value = null;
  if (tool?.kind !== 'draw' || open === null) return;
  if (tool.corners.length < LEAST_CORNERS) {
    store.notice.value = { text: 'A zone needs three corners. Press the map once for each.' };
    return;
  }
  const message = firstMessage(store, run(store, addZone(open, tool.corners)));
  const plan = store.open.value?.document.plan;
  if (message !== null || plan === undefined) {
    store.notice.value = { text: message ?? '' };
    return;
  }
  const zone = plan.zones.length - 1;
  store.tool.value = { kind: 'reshape', zone, corners: null };
  store.notice.value = {
    text: `${zoneName(plan, zone)} added: nothing may stand there. Its rule and name are in the plan.`,
  };
}

/** Keys on the map while something is drawn: Enter puts a point in the middle of the map, Backspace takes the last away, Escape ends. */
export function toolKey(store: Store, event: KeyboardEvent, middle: () => LonLat): boolean {
  if (store.tool.value === null || event.altKey || event.ctrlKey || event.metaKey) return false;
  if (event.key === 'Escape') endTool(store);
  else if (!isDrawing(store)) return false;
  else if (event.key === 'Enter' && event.shiftKey) finishTool(store);
  else if (event.key === 'Enter' || event.key === ' ') putPoint(store, middle());
  else if (event.key === 'Backspace') takeLast(store);
  else return false;
  event.preventDefault();
  return true;
}
