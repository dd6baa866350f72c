/** What the files of the start sheet offer, worked out once for each choice of line, gaps and fixing. */
import type { Finding, Result } from '@halfcup/core';
import { courseLength, sharedStretches } from '@halfcup/core/geometry';
import { offeredCourse, type OfferedCourse } from '@halfcup/core/plan';
import { fixedFile } from '../../state/open/starting.ts';
import type { CourseFile, Starting } from '../../state/store/store.ts';
import type { Units } from '@halfcup/core/plan';
import { farText } from '../../words.ts';
import type { CourseDraft } from './draft.ts';

export interface Offer {
  /** As it would be taken. */
  readonly file: CourseFile;
  readonly offered: Result<OfferedCourse>;
  /** Flaws that fixing takes out. */
  readonly fixable: readonly Finding[];
  readonly others: readonly Finding[];
  /** Metres; `null` where the course cannot be built. */
  readonly length: number | null;
}

const FIXABLE = new Set(['track-spike', 'track-tangle']);
const kept = new WeakMap<CourseFile, Map<string, Offer>>();
const fixedOnce = new WeakMap<CourseFile, CourseFile>();

const fixedOf = (file: CourseFile): CourseFile => {
  const fixed = fixedOnce.get(file) ?? fixedFile(file);
  fixedOnce.set(file, fixed);
  return fixed;
};

function offerOf(original: CourseFile, { track, gaps, reverse, fixed }: CourseDraft): Offer {
  const file = fixed ? fixedOf(original) : original;
  const key = `${track}|${gaps}|${reverse}|${fixed}`;
  const known = kept.get(original) ?? new Map<string, Offer>();
  kept.set(original, known);
  const made = known.get(key) ?? {
    file,
    ...sorted(
      offeredCourse(
        { gpx: file.name, gaps, reverse, ...(track === '' ? {} : { track: Number(track) }) },
        file.document,
      ),
    ),
  };
  known.set(key, made);
  return made;
}

const sorted = (offered: Result<OfferedCourse>): Omit<Offer, 'file'> => ({
  offered,
  fixable: offered.findings.filter(({ code }) => FIXABLE.has(code)),
  others: offered.findings.filter(({ code }) => !FIXABLE.has(code)),
  length: offered.ok ? courseLength(offered.value.course.course) : null,
});

export const offersOf = ({ files }: Starting, courses: readonly CourseDraft[]): readonly Offer[] =>
  courses.map((course, k) => offerOf(files[k]!, course));

const sharedOnce = new WeakMap<Offer, WeakMap<Offer, readonly [number, number]>>();

/** Metres that a course runs along another, the same way and against it. */
function sharedLength(offer: Offer, other: Offer): readonly [number, number] {
  if (!offer.offered.ok || !other.offered.ok) return [0, 0];
  const known = sharedOnce.get(offer) ?? new WeakMap<Offer, readonly [number, number]>();
  sharedOnce.set(offer, known);
  const found = known.get(other);
  if (found !== undefined) return found;
  const stretches = sharedStretches(offer.offered.value.course, other.offered.value.course);
  const sum = (against: boolean): number =>
    stretches.filter((one) => (one.against === true) === against).reduce((all, { from, to }) => all + to - from, 0);
  const lengths = [sum(false), sum(true)] as const;
  known.set(other, lengths);
  return lengths;
}

/** "Half follows Full for 11.2 km." for each pair, the shorter course first. */
export function sharedLines(offers: readonly Offer[], names: readonly string[], units: Units): readonly string[] {
  return offers.flatMap((offer, k) =>
    offers.flatMap((other, j) => {
      if (k === j || (offer.length ?? 0) > (other.length ?? 0) || (offer.length === other.length && k < j)) return [];
      const [same, against] = sharedLength(offer, other);
      const parts = [
        same > 0 ? `follows ${names[j]!} for ${farText(same, units)}` : '',
        against > 0 ? `runs against it for ${farText(against, units)}` : '',
      ].filter((part) => part !== '');
      if (parts.length === 0) return [`${names[k]!} and ${names[j]!} share no road.`];
      return [
        `${names[k]!} ${parts.join(' and ').replace('runs against it', same > 0 ? 'runs against it' : `runs against ${names[j]!}`)}.`,
      ];
    }),
  );
}
