/** What is this GPX file? Asked when one comes while a plan is open. */
import type { Finding } from '@halfcup/core';
import { courseLength, sharedStretches } from '@halfcup/core/geometry';
import { offeredCourse } from '@halfcup/core/plan';
import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { addCourse, replaceCourse } from '../../state/edits/courses.ts';
import { useStore, type CourseFile } from '../../state/store/store.ts';
import { messageOf } from '../../state/view/voice.ts';
import { farText, lengthText } from '../../words.ts';
import { takePlaced } from '../../work/placed.ts';
import { TypedChoice } from '../ui/fields/TypedField.tsx';
import { useModal } from './useModal.ts';

/** How the file's line and a course differ, in lines to read. */
function Compared({ file, course }: { readonly file: CourseFile; readonly course: string }): JSX.Element | null {
  const store = useStore();
  const units = store.units.value;
  const own = store.open.value?.analysis.courses.find((one) => one.course.id === course);
  const offered = useMemo(() => offeredCourse({ gpx: file.name, gaps: 'join' }, file.document), [file]);
  const lines = useMemo(() => {
    if (own === undefined || !offered.ok) return [];
    const [mine, theirs] = [courseLength(own.course), courseLength(offered.value.course.course)];
    const shared = sharedStretches(offered.value.course, own).filter(({ against }) => against !== true);
    const apart = [...shared, { from: theirs, to: theirs }].map(
      ({ from }, k) => [k === 0 ? 0 : shared[k - 1]!.to, from] as const,
    );
    const longer = theirs - mine;
    return [
      `${file.name} is ${farText(theirs, units)} long, ${own.course.name} ${farText(mine, units)}: ${Math.abs(longer) < 1 ? 'the same' : `${lengthText(Math.abs(longer), units)} ${longer > 0 ? 'longer' : 'shorter'}`}.`,
      `They run the same way on one road for ${farText(
        shared.reduce((sum, { from, to }) => sum + to - from, 0),
        units,
      )}.`,
      ...apart
        .filter(([from, to]) => to - from > 50)
        .map(([from, to]) => `From ${farText(from, units)} to ${farText(to, units)} of ${file.name} they are apart.`),
    ];
  }, [own, offered, units]);
  if (!offered.ok) return <Refusals findings={offered.findings} />;
  return (
    <div role="status">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

function Refusals({ findings }: { readonly findings: readonly Finding[] }): JSX.Element | null {
  const store = useStore();
  if (findings.length === 0) return null;
  return (
    <ul class="entry-trouble" role="alert">
      {findings.map((finding, k) => (
        <li key={k}>{messageOf(store, finding)}</li>
      ))}
    </ul>
  );
}

interface LineProps {
  readonly file: CourseFile;
  readonly done: (findings: readonly Finding[], words: string) => void;
}

function LineChoice({ file, done }: LineProps): JSX.Element {
  const store = useStore();
  const courses = store.open.value?.document.plan.courses ?? [];
  const [course, setCourse] = useState(store.course.value ?? courses[0]?.id ?? '');
  const [comparing, setComparing] = useState(false);
  const name = courses.find(({ id }) => id === course)?.name ?? course;
  return (
    <fieldset class="start-choice">
      <legend>Another line of a course</legend>
      <TypedChoice
        label="Course"
        value={course}
        choices={courses.map((one) => [one.id, one.name] as const)}
        change={setCourse}
      />
      <div class="row">
        <button
          type="button"
          onClick={() => done(replaceCourse(store, course, file), `${name} now runs along ${file.name}.`)}
        >
          Replace the course
        </button>
        <button type="button" aria-pressed={comparing} onClick={() => setComparing(!comparing)}>
          Compare with it
        </button>
      </div>
      {comparing ? <Compared file={file} course={course} /> : null}
    </fieldset>
  );
}

function Sheet({ file }: { readonly file: CourseFile }): JSX.Element {
  const store = useStore();
  const close = (): void => void (store.arrived.value = null);
  const ref = useModal(close);
  const plan = store.open.value?.document.plan;
  const [refused, setRefused] = useState<readonly Finding[]>([]);
  const done = (findings: readonly Finding[], words: string): void => {
    setRefused(findings);
    if (findings.length > 0) return;
    close();
    store.notice.value = { text: words };
  };
  const start = (): void => {
    close();
    store.starting.value = { files: [file], findings: [] };
  };
  const points = (): void => {
    close();
    void takePlaced(store, new File([file.original], file.name));
  };
  const noPoints = file.document.waypoints.length === 0;
  return (
    <dialog ref={ref} class="start-sheet arrived" aria-labelledby="arrived-title">
      <div class="start-body">
        <h2 id="arrived-title">What is {file.name}?</h2>
        <p class="soft">“{plan?.name}” is open and stays as it is until you choose.</p>
        <button type="button" onClick={start}>
          A new plan
        </button>
        <button
          type="button"
          onClick={() => done(addCourse(store, file), `${file.name} is a new course with a race of its own.`)}
        >
          A new course of this plan
        </button>
        <LineChoice file={file} done={done} />
        <button type="button" disabled={noPoints} onClick={points}>
          Points recorded on the ground
        </button>
        {noPoints ? <p class="soft">The file has no waypoints, so it holds no recorded points.</p> : null}
        <Refusals findings={refused} />
        <div class="row">
          <button type="button" onClick={close}>
            Cancel
          </button>
        </div>
      </div>
    </dialog>
  );
}

export function ArrivedSheet(): JSX.Element | null {
  const { arrived } = useStore();
  return arrived.value === null ? null : <Sheet key={arrived.value.name} file={arrived.value} />;
}
