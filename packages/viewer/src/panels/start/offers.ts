/** What the files of the start sheet offer, worked out once for each choice of line, gaps and fixing. */
import type { Finding, Result } from '@halfcup/core';
import { courseLength, sharedStretches } from '@halfcup/core/geometry';
import type { OfferedCourse } from '@halfcup/core/plan';
import {
  FIRST_CHOICE,
  offeredFile,
  sameChoice,
  type CourseChoice,
  type OfferedFile,
} from '../../state/open/offering.ts';
import type { CourseFile, Starting, Store } from '../../state/store/store.ts';
import type { Units } from '@halfcup/core/plan';
import { farText } from '../../words.ts';
import type { CourseDraft } from './draft.ts';
import { elsewhere } from '../../work/elsewhere.ts';

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
/** Courses of so many points the page works out itself, within a frame or two. */
const FEW = 20_000;

const choiceOf = ({ track, gaps, reverse, fixed }: CourseDraft): CourseChoice => ({ track, gaps, reverse, fixed });
const keyOf = ({ track, gaps, reverse, fixed }: CourseChoice): string => `${track}|${gaps}|${reverse}|${fixed}`;

const pointsOf = ({ document: { tracks, routes } }: CourseFile): number =>
  [...tracks, ...routes].reduce((sum, { segments }) => sum + segments.reduce((all, { lon }) => all + lon.length, 0), 0);

function keepOffer(original: CourseFile, choice: CourseChoice, { file, offered }: OfferedFile): Offer {
  const offer = { file, ...sorted(offered) };
  const known = kept.get(original) ?? new Map<string, Offer>();
  known.set(keyOf(choice), offer);
  kept.set(original, known);
  return offer;
}

/** What a file offers by a choice; `null`: it is too long to be worked out here. */
function offerOf(original: CourseFile, choice: CourseChoice): Offer | null {
  const known = kept.get(original)?.get(keyOf(choice));
  if (known !== undefined) return known;
  if (original.offered !== undefined && sameChoice(choice, FIRST_CHOICE))
    return keepOffer(original, choice, { file: original, offered: original.offered });
  return pointsOf(original) > FEW ? null : keepOffer(original, choice, offeredFile(original, choice));
}

const sorted = (offered: Result<OfferedCourse>): Omit<Offer, 'file'> => ({
  offered,
  fixable: offered.findings.filter(({ code }) => FIXABLE.has(code)),
  others: offered.findings.filter(({ code }) => !FIXABLE.has(code)),
  length: offered.ok ? courseLength(offered.value.course.course) : null,
});

/** The offers by the choices made; of a long course the one before until `workOut` has the new one. */
export interface Offers {
  readonly offers: readonly Offer[];
  /** The first course whose offer is still to be worked out. */
  readonly due: { readonly original: CourseFile; readonly choice: CourseChoice } | null;
}

export function offersOf({ files }: Starting, courses: readonly CourseDraft[]): Offers {
  const found = courses.map((course, k) => {
    const original = files[k]!;
    const choice = choiceOf(course);
    return { original, choice, offer: offerOf(original, choice) };
  });
  const due = found.find(({ offer }) => offer === null) ?? null;
  return {
    offers: found.map(({ original, offer }) => offer ?? lastOf(original)),
    due: due === null ? null : { original: due.original, choice: due.choice },
  };
}

/** The offer of a file that was worked out last. */
function lastOf(original: CourseFile): Offer {
  const last = [...(kept.get(original)?.values() ?? [])].at(-1);
  return last ?? keepOffer(original, FIRST_CHOICE, offeredFile(original, FIRST_CHOICE));
}

/** Works out what is due elsewhere than in the page. */
export async function workOut(store: Store, { original, choice }: NonNullable<Offers['due']>): Promise<void> {
  const { offered: _, ...file } = original;
  const told = await elsewhere(store, `Working out ${original.name}`, { kind: 'offer', file, choice });
  if (told?.kind === 'offered') keepOffer(original, choice, told);
  else if (told !== null) keepOffer(original, choice, offeredFile(original, choice));
}

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
