/** One line of a list of facts: what it is, and its value. */
import type { JSX } from 'preact';

export const Fact = ({ name, children }: { readonly name: string; readonly children: string }): JSX.Element => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);
