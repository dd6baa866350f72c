/** What becomes of the variant shown when the plan changes. Pure. */
import type { Plan } from '@halfcup/core';

/** The same name, else that of the one renamed in its place; `undefined` where it went. */
export function followed(before: Plan, after: Plan, name: string | null): string | null | undefined {
  if (name === null || after.variants.some((one) => one.name === name)) return name;
  const at = before.variants.findIndex((one) => one.name === name);
  const others = (plan: Plan): string =>
    JSON.stringify(plan.variants.map((one, index) => (index === at ? null : one.name)));
  return after.variants.length === before.variants.length && others(before) === others(after)
    ? after.variants[at]?.name
    : undefined;
}
