/** A button that reads a table from a file, and hands over what was chosen. */
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';

interface Props {
  readonly label: string;
  /** Of the file field, by which tests find it. */
  readonly name: string;
  readonly take: (file: File) => void;
}

export function TableFileButton({ label, name, take }: Props): JSX.Element {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,.tsv,.txt,text/csv"
        class={name}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) take(file);
        }}
      />
    </>
  );
}
