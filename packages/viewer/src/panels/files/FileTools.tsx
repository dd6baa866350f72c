/** Opening and saving the plan as a file. */
import type { JSX } from 'preact';
import { OpenButton } from '../OpenButton.tsx';
import { SaveButton } from './SaveButton.tsx';

export const FileTools = (): JSX.Element => (
  <>
    <OpenButton label="Open" />
    <SaveButton />
  </>
);
