/** A part of the station's editor, folded away until it is wanted. */
import type { ComponentChildren, JSX } from 'preact';

interface Props {
  readonly title: string;
  /** What is in it, in a few words, seen while it is closed. */
  readonly about?: string | undefined;
  readonly children: ComponentChildren;
}

export const Section = ({ title, about, children }: Props): JSX.Element => (
  <details class="edit-section">
    <summary>
      <span class="edit-title">{title}</span>
      {about === undefined || about === '' ? null : <span class="soft edit-about">{about}</span>}
    </summary>
    <div class="edit-body">{children}</div>
  </details>
);
