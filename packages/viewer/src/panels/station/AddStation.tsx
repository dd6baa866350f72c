/** Adds a station: at the place asked about, else in the middle of the longest leg; the words beside it say where. */
import { courseLength } from '@halfcup/core/geometry';
import type { JSX } from 'preact';
import { pinSide, type Way } from '../../state/edits/cross.ts';
import { courseOf } from '../../state/view/derive.ts';
import { addOnCourse } from '../../state/edits/moves.ts';
import { useStore, type CoursePlace, type OpenPlan } from '../../state/store/store.ts';
import { farText } from '../../words.ts';
import { notify } from './editing.ts';

interface Spot extends CoursePlace {
  readonly side: Way;
  readonly words: string;
}

/** The middle of the longest leg of the races on a course, on the side of the station that it starts from. */
function longestLeg(open: OpenPlan, course: string): Spot | null {
  const legs = open.analysis.spacing.filter((race) => race.course === course).flatMap((race) => race.legs);
  const [leg] = legs.toSorted((a, b) => b.length - a.length);
  const from = open.analysis.stations.find(({ id }) => id === leg?.from);
  const found = courseOf(open, course);
  const measure = leg === undefined ? (found === undefined ? null : courseLength(found) / 2) : leg.end - leg.length / 2;
  return measure === null
    ? null
    : { course, measure, side: from === undefined ? 'right' : pinSide(from), words: 'the middle of the longest leg' };
}

export function AddStation({ open }: { readonly open: OpenPlan }): JSX.Element | null {
  const store = useStore();
  const units = store.units.value;
  const { value: asked } = store.asked;
  const spot: Spot | null =
    asked !== null
      ? { ...asked, side: 'right', words: 'the place you asked about' }
      : store.course.value === null
        ? null
        : longestLeg(open, store.course.value);
  if (spot === null) return null;
  const at = farText(spot.measure, units);
  const add = (): void =>
    notify(
      store,
      addOnCourse(store, spot.course, spot.measure, spot.side),
      `Added a station at ${at}, ${spot.side}-hand side. Drag it to where it belongs, or type its distance.`,
    );
  return (
    <div class="stations-foot">
      <button type="button" aria-describedby="add-where" onClick={add}>
        Add station
      </button>
      <span class="soft" id="add-where">
        at {at}, {spot.words}
      </span>
    </div>
  );
}
