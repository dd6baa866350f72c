/** "Where is this?": what one says of a place to somebody who must find it. */
import type { JSX, RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { ask, placeFacts, placeLines } from '../../state/view/place.ts';
import { useStore, type CoursePlace, type OpenPlan, type Store } from '../../state/store/store.ts';
import { AddHere } from './AddHere.tsx';
import { CopyText } from './CopyText.tsx';

/** Escape closes the card, unless there is a trial: then it puts the station back. The focus goes in, and back to where it was. */
function useDialogue(store: Store, place: CoursePlace): RefObject<HTMLElement | null> {
  const card = useRef<HTMLElement>(null);
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || store.trial.value !== null) return;
      ask(store, null);
    };
    const before = document.activeElement;
    window.addEventListener('keydown', press);
    return () => {
      window.removeEventListener('keydown', press);
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, []);
  useEffect(() => card.current?.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true }), [place]);
  return card;
}

function Card({ open, place }: { readonly open: OpenPlan; readonly place: CoursePlace }): JSX.Element {
  const store = useStore();
  const card = useDialogue(store, place);
  const facts = placeFacts(open, place);
  return (
    <section ref={card} class="place" aria-labelledby="place-head">
      <header>
        <h2 id="place-head" tabindex={-1}>
          Where is this?
        </h2>
        <button type="button" onClick={() => ask(store, null)}>
          Close
        </button>
      </header>
      <p class="place-first">In an emergency call the local emergency number first. Then say:</p>
      {facts === null ? (
        <p>The course has a gap here, so this place has no coordinates. Choose another place.</p>
      ) : (
        <>
          <CopyText lines={placeLines(open, facts)} />
          <AddHere course={place.course} measure={facts.measure} />
        </>
      )}
    </section>
  );
}

export function PlaceCard(): JSX.Element | null {
  const store = useStore();
  const open = store.open.value;
  const place = store.asked.value;
  return open === null || place === null ? null : <Card open={open} place={place} />;
}
