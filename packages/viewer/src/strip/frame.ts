/** Heights of the strip, from the top: rings on the left, the course, rings on the right, the findings, one lane for each race, the axis. */
import type { Course } from '@halfcup/core/stages';
import type { Store } from '../state/store/store.ts';
import { fitView, wholeView, type View } from './geometry.ts';

export const MARGIN = 18;
/** Room for the elevations. */
export const RIGHT = 52;
export const LINE_Y = 62;
/** Middle of the marks of findings. */
export const FLAGS_Y = 128;
export const LANES_Y = 144;
export const LANE = 19;
export const AXIS = 22;
/** With the clock: what stations do, one band for each race, and the vehicles. */
export const PHASES = 20;
export const CROWD = 42;
export const VEHICLES = 18;

export const viewOf = (store: Store, course: Course): View =>
  store.stripView.value === null ? wholeView(course) : fitView(store.stripView.value, course);
