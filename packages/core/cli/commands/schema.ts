/** `halfcup schema`: the JSON Schema of a plan, or of what a command prints as JSON. */
import { compareSchema } from '../../src/export/schemas/compare.ts';
import { courseSchema } from '../../src/export/schemas/course.ts';
import { findingSchema } from '../../src/export/schemas/finding.ts';
import { groundSchema } from '../../src/export/schemas/ground.ts';
import { improveSchema } from '../../src/export/schemas/improve.ts';
import { layoutSchema } from '../../src/export/schemas/layout.ts';
import { planJsonSchema } from '../../src/export/schemas/plan.ts';
import { raceDaySchema } from '../../src/export/schemas/raceDay.ts';
import { reviewSchema } from '../../src/export/schemas/review.ts';
import { snapSchema } from '../../src/export/schemas/snap.ts';
import { good } from '../../src/finding.ts';
import { suggestion } from '../../src/plan/nearest.ts';
import { type Run, refuse } from '../call.ts';
import { REFUSAL } from '../messages.ts';
import { json } from '../printing.ts';

const SCHEMAS: Readonly<Record<string, () => object>> = {
  plan: planJsonSchema,
  course: () => courseSchema,
  snap: () => snapSchema,
  layout: () => layoutSchema,
  raceday: () => raceDaySchema,
  compare: () => compareSchema,
  improve: () => improveSchema,
  review: () => reviewSchema,
  ground: () => groundSchema,
  finding: () => findingSchema,
};

export const run: Run = async ({ positionals }) => {
  const name = positionals[0]!;
  if (!Object.hasOwn(SCHEMAS, name))
    return refuse(REFUSAL.noSchema(name, suggestion(name, Object.keys(SCHEMAS), 'schemas')));
  return good({ text: json(SCHEMAS[name]!()) });
};
