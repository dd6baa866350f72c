/** A list of the plan whose entries can be added and deleted; each opens to its fields. */
import { type Finding } from '@halfcup/core';
import { findingSubject } from '@halfcup/core/sentences';
import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';
import { rawPlan, setValue, valueAt, type Path } from '../../state/edits/edits.ts';
import { firstMessage, voiceIn } from '../../state/view/voice.ts';
import { type Store, useStore } from '../../state/store/store.ts';
import { run } from '../../state/edits/workbench.ts';

interface Props {
  readonly path: Path;
  /** One of them: "race". */
  readonly word: string;
  readonly title: (index: number) => string;
  /** What stands softly beside a title. */
  readonly beside?: (index: number) => string;
  /** The entry's fields. */
  readonly entry: (index: number) => ComponentChildren;
  /** A new entry, in the file's own shape; absent where none can be added here. */
  readonly fresh?: () => unknown;
  readonly addLabel?: string;
  /** Entries that may not go. */
  readonly least?: number;
  readonly none?: string;
}

/** Who names what was to be deleted, each once. */
const usersOf = (store: Store, findings: readonly Finding[]): readonly string[] => [
  ...new Set(
    findings
      .filter(({ code }) => code === 'plan-reference')
      .map((finding) => findingSubject(finding, voiceIn(store).names))
      .filter((subject) => subject !== ''),
  ),
];

export function EntryList({ path, word, title, beside, entry, fresh, addLabel, least = 0, none }: Props): JSX.Element {
  const store = useStore();
  const [trouble, setTrouble] = useState<string | null>(null);
  const open = store.open.value;
  const list = open === null ? [] : valueAt(rawPlan(open.document), path);
  const count = Array.isArray(list) ? list.length : 0;
  const report = (findings: readonly Finding[]): void => setTrouble(firstMessage(store, findings));
  const add = (): void => {
    const value = fresh?.();
    report(
      run(
        store,
        Array.isArray(list)
          ? setValue([...path, '-'], value, `add a ${word}`)
          : setValue(path, [value], `add a ${word}`),
      ),
    );
  };
  const remove = (index: number): void => {
    const findings = run(store, setValue([...path, index], undefined, `delete ${word} ${title(index)}`));
    const users = usersOf(store, findings);
    if (users.length === 0) report(findings);
    else setTrouble(`${title(index)} is still in use: ${users.join(', ')}. Remove it there first.`);
  };
  return (
    <div class="entries">
      {count === 0 && none !== undefined ? <p class="soft">{none}</p> : null}
      {Array.from({ length: count }, (_, index) => (
        <details key={index} class="more">
          <summary>
            {title(index)}
            {beside === undefined ? null : <span class="soft"> {beside(index)}</span>}
          </summary>
          {entry(index)}
          {count > least ? (
            <button type="button" class="quiet" onClick={() => remove(index)}>
              Delete {word} {title(index)}
            </button>
          ) : null}
        </details>
      ))}
      {trouble === null ? null : (
        <p class="entry-trouble" role="alert">
          {trouble}
        </p>
      )}
      {fresh === undefined ? null : (
        <button type="button" onClick={add}>
          {addLabel ?? `Add a ${word}`}
        </button>
      )}
    </div>
  );
}
