/** The head of a table of a vehicle's stops. */
import type { JSX } from 'preact';

export const StopHead = (): JSX.Element => (
  <thead>
    <tr>
      <th scope="col" class="left">
        Stop
      </th>
      <th scope="col">Arrives</th>
      <th scope="col">Leaves</th>
      <th scope="col">Load</th>
    </tr>
  </thead>
);
