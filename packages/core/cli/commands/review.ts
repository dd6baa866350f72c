/** `halfcup review`: every check of a plan, or of several with one JSON document a line. */
import { type Run, has, refuse } from '../call.ts';

export const run: Run = async (call, io) => {
  const [file, ...more] = call.positionals;
  if (has(call, 'json-lines')) {
    if (has(call, 'placed'))
      return refuse('found --placed with --json-lines; expected one of them: recorded points are of one plan');
    if (has(call, 'report'))
      return refuse('found --report with --json-lines; expected one of them: a report is of one plan');
    // The threads load the checks, not this one.
    const { reviewMany } = await import('../reviewMany.ts');
    return reviewMany(io, call);
  }
  if (has(call, 'workers'))
    return refuse(
      'found --workers without --json-lines; expected both, or neither: one plan is reviewed in one thread',
    );
  if (more.length > 0)
    return refuse(
      `found ${call.positionals.length} plans; expected one, or --json-lines, which prints one document a line`,
    );
  const { reviewOne } = await import('../reviewOne.ts');
  return reviewOne(io, file!, call);
};
