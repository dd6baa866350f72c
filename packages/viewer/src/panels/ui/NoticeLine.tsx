/** What has just happened, or what is to be decided; always there for screen readers, shown while it has something to say. */
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { useStore, type Notice } from '../../state/store/store.ts';

/** Long enough to be read twice. */
const SHOWN = 6000;

const Told = ({ notice }: { readonly notice: Notice }): JSX.Element => (
  <div class="notice">
    <p>{notice.text}</p>
    {notice.choices?.map(({ label, act }) => (
      <button key={label} type="button" onClick={act}>
        {label}
      </button>
    ))}
  </div>
);

export function NoticeLine(): JSX.Element {
  const store = useStore();
  const notice = store.notice.value;
  const question = store.question.value;
  useEffect(() => {
    if (notice === null || notice.choices !== undefined) return undefined;
    const end = setTimeout(() => {
      if (store.notice.value === notice) store.notice.value = null;
    }, SHOWN);
    return () => clearTimeout(end);
  }, [notice]);
  return (
    <div class="notice-place" role="status">
      {question === null ? null : <Told notice={question} />}
      {store.asking.value === null ? null : <Told notice={store.asking.value} />}
      {notice === null ? null : <Told notice={notice} />}
    </div>
  );
}
