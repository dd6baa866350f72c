/** A column's head by which rows are sorted: once up, once more down. */
import type { ComponentChildren, JSX } from 'preact';
import type { SortKey, Sorting } from '../../state/view/rows.ts';

interface Props {
  readonly by: SortKey;
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
  readonly left?: boolean;
  readonly children: ComponentChildren;
}

export function SortHead({ by, sorting, onSort, left, children }: Props): JSX.Element {
  const on = sorting.key === by;
  return (
    <th
      scope="col"
      class={left === true ? 'left' : ''}
      {...(on ? { 'aria-sort': sorting.down ? ('descending' as const) : ('ascending' as const) } : {})}
    >
      <button type="button" class="sort-button" onClick={() => onSort({ key: by, down: on && !sorting.down })}>
        {children}
        <span class="sort-mark" aria-hidden="true">
          {on ? (sorting.down ? '▼' : '▲') : ''}
        </span>
      </button>
    </th>
  );
}
