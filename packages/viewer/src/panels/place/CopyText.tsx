/** Lines to be read out or copied, exactly as they stand. */
import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';

/** Marks the text, for those browsers and pages that may not write to the clipboard. */
function mark(element: HTMLElement): void {
  const range = document.createRange();
  range.selectNodeContents(element);
  const selection = document.getSelection();
  selection?.removeAllRanges();
  selection?.addRange(range);
}

export function CopyText({ lines }: { readonly lines: readonly string[] }): JSX.Element {
  const list = useRef<HTMLUListElement>(null);
  const [status, setStatus] = useState('');
  const text = lines.join('\n');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setStatus('Copied.');
    } catch {
      if (list.current !== null) mark(list.current);
      setStatus('The browser does not let this page copy. The text is selected: press Ctrl+C (⌘C).');
    }
  };
  return (
    <>
      <ul ref={list} class="place-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p class="place-copy">
        <button type="button" onClick={() => void copy()}>
          Copy this text
        </button>
        <span role="status">{status}</span>
      </p>
    </>
  );
}
