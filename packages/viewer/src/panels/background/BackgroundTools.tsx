/** What is drawn under the course. */
import type { JSX } from 'preact';

export const BackgroundTools = (): JSX.Element | null => null;
