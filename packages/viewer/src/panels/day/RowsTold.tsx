/** What there is to tell of the rows of a table that was read, by file, line and column. */
import type { JSX } from 'preact';

export const RowsTold = ({ lines }: { readonly lines: readonly string[] }): JSX.Element | null =>
  lines.length === 0 ? null : (
    <div role="alert">
      <ul class="rows-told">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
