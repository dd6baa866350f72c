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
  const [said, setSaid] = useState('');
  const text = lines.join('\n');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      if (list.current !== null) mark(list.current);
      setSaid('This browser does not let the page copy. The text is marked: copy it with Ctrl+C, or ⌘C.');
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
          Copy these lines
        </button>
        <span role="status">{said}</span>
      </p>
    </>
  );
}
