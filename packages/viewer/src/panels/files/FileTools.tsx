/** Opening and saving the plan as a file, and the plans that the browser keeps. */
import type { JSX } from 'preact';
import { OpenButton } from './OpenButton.tsx';
import { PlansButton } from './PlansButton.tsx';
import { SaveButton } from './SaveButton.tsx';

export const FileTools = (): JSX.Element => (
  <>
    <OpenButton label="Open" />
    <SaveButton />
    <PlansButton />
  </>
);
