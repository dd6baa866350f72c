/** A table of changes between two variants, and what its rows have in common. */
import type { Change } from '@halfcup/core/stages';
import type { ComponentChildren, JSX } from 'preact';

export interface Names {
  readonly stationOf: (id: string) => string;
  readonly choose: (id: string) => void;
}

/** "+0.35"; a dash where there is nothing to subtract. */
export const differing = ([before, after]: Change<number | null>, figure: (value: number | null) => string): string => {
  if (before === null || after === null) return figure(null);
  const text = figure(after - before);
  return after > before && /[1-9]/u.test(text) ? `+${text}` : text;
};

/** Two lines in one cell: along the course, and by wheel. */
const Both = ({ along, wheel }: { readonly along: string; readonly wheel: string }): JSX.Element => (
  <td class="figure">
    <span class="stacked">{along}</span>
    <span class="stacked soft">{wheel}</span>
  </td>
);

/** The cells of a row: before, after, and by how much they differ. */
export const ChangeCells = ({
  along,
  wheel,
  figure,
}: {
  readonly along: Change<number | null>;
  readonly wheel: Change<number | null>;
  readonly figure: (value: number | null) => string;
}): JSX.Element => (
  <>
    <Both along={figure(along[0])} wheel={figure(wheel[0])} />
    <Both along={figure(along[1])} wheel={figure(wheel[1])} />
    <Both along={differing(along, figure)} wheel={differing(wheel, figure)} />
  </>
);

/** A table of changes: what it is of, before, and after. */
export function ChangeTable({
  caption,
  unit,
  names,
  head,
  children,
}: {
  readonly caption: string;
  readonly unit: string;
  readonly names: Change<string>;
  readonly head: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <table class="items changes">
      <caption>
        {caption}, {unit}
      </caption>
      <thead>
        <tr>
          <th scope="col" class="left">
            {head}
          </th>
          <th scope="col" class="change-name">
            {names[0]}
          </th>
          <th scope="col" class="change-name">
            {names[1]}
          </th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      {children}
    </table>
  );
}
