/** What comes of a course that is drawn up from parts. */
import type { Finding } from '@halfcup/core';
import type { JSX } from 'preact';
import { useStore } from '../../state/store/store.ts';
import type { Tried } from '../../state/trial/course.ts';
import { messageOf } from '../../state/view/voice.ts';
import { farText } from '../../words.ts';

/** The length of what is drawn, or why it is no course yet. */
export function Outcome({ tried }: { readonly tried: Tried | null }): JSX.Element {
  const store = useStore();
  return (
    <div role="status" class="parts-outcome">
      {tried === null ? (
        <p class="soft">Fill in the distances to see the course on the map and the strip.</p>
      ) : tried.ok ? (
        <p>
          <strong>{farText(tried.length, store.units.value)}</strong>, drawn on the map and the strip.
        </p>
      ) : (
        <>
          {tried.findings.map((finding, k) => (
            <p key={k} class="entry-trouble">
              {messageOf(store, finding)}
            </p>
          ))}
          <p class="soft">The draft is kept here until it joins.</p>
        </>
      )}
    </div>
  );
}

export function Refusals({ findings }: { readonly findings: readonly Finding[] }): JSX.Element {
  const store = useStore();
  return (
    <>
      {findings.map((finding, k) => (
        <p key={k} class="entry-trouble" role="alert">
          {messageOf(store, finding)}
        </p>
      ))}
    </>
  );
}
