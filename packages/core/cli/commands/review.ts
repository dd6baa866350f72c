/** `halfcup review`: every check of a plan, or of several with one JSON document a line. */
import { type Run, has, refuse } from '../call.ts';
import { REFUSAL } from '../messages.ts';

export const run: Run = async (call, io) => {
  const [file, ...more] = call.positionals;
  if (has(call, 'json-lines')) {
    if (has(call, 'placed')) return refuse(REFUSAL.placedOfOne());
    if (has(call, 'report')) return refuse(REFUSAL.reportOfOne());
    // The threads load the checks, not this one.
    const { reviewMany } = await import('../reviewMany.ts');
    return reviewMany(io, call);
  }
  if (has(call, 'workers')) return refuse(REFUSAL.workersAlone());
  if (more.length > 0) return refuse(REFUSAL.onePlan(call.positionals.length));
  const { reviewOne } = await import('../reviewOne.ts');
  return reviewOne(io, file!, call);
};
