/** Always on the page. */
import type { JSX } from 'preact';

export const Caution = (): JSX.Element => (
  <footer class="caution">
    <strong>Distances are planning aids.</strong> Local codes, the road authority, the police and the licensed
    traffic-control or medical practitioner decide. In an emergency call the local emergency number first.
  </footer>
);
