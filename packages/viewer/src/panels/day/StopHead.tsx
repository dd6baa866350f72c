/** The head of a table of a vehicle's stops. */
import type { JSX } from 'preact';

export const StopHead = (): JSX.Element => (
  <thead>
    <tr>
      <th scope="col" class="left">
        Stop
      </th>
      <th scope="col">arrives</th>
      <th scope="col">leaves</th>
      <th scope="col">load</th>
    </tr>
  </thead>
);
