/** The commands, in the order of help. A command is listed here once it exists. */
import type { CommandSpec } from './call.ts';
import { COURSE_COMMANDS } from './courseCommands.ts';
import { PLAN_COMMANDS } from './planCommands.ts';

export const COMMANDS: readonly CommandSpec[] = [...COURSE_COMMANDS, ...PLAN_COMMANDS];
