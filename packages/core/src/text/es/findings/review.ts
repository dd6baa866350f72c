import type { ReviewParams } from '../../params/review.ts';
import type { TextsOf } from '../../sentence.ts';

export const review: TextsOf<ReviewParams> = {};
