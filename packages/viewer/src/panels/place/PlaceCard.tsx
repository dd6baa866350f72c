/** "Where is this?": what one says of a place to somebody who must find it. */
import type { JSX } from 'preact';

export const PlaceCard = (): JSX.Element | null => null;
