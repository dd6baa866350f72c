import type { ProgramParams } from '../../params/program.ts';
import type { TextsOf } from '../../sentence.ts';

export const program: TextsOf<ProgramParams> = {};
