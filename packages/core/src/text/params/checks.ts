/** By what texts on checks are found: the code of a check, or of what is checked before there is a layout; the key of a reason. */
import type { reasons, titles } from '../en/checks.ts';

export type CheckCode = keyof typeof titles;

/** Why a check could not run. */
export type ReasonCode = keyof typeof reasons;
