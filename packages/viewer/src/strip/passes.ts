/** The passes of each course as the strip draws them, kept with the plan they come from. */
import { keep } from '../state/view/derive.ts';
import type { OpenPlan } from '../state/store/store.ts';
import { stripPasses, type StripPass } from './geometry.ts';

export const stripPassesOf: (open: OpenPlan) => (course: string) => readonly StripPass[] = keep((open: OpenPlan) => {
  const known = new Map<string, readonly StripPass[]>();
  return (course) => {
    const passes = known.get(course) ?? stripPasses(open.analysis.stations, course);
    known.set(course, passes);
    return passes;
  };
});
