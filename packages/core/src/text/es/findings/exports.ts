import type { ExportsParams } from '../../params/exports.ts';
import type { TextsOf } from '../../sentence.ts';

export const exports: TextsOf<ExportsParams> = {};
