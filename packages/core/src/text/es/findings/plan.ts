import type { PlanParams } from '../../params/plan.ts';
import type { TextsOf } from '../../sentence.ts';

export const plan: TextsOf<PlanParams> = {};
