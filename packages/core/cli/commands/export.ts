/** `halfcup export`: the layout for other tools. */
import { good } from '../../src/finding.ts';
import { type Run, has, refuse } from '../call.ts';
import { analysePlan } from '../plans.ts';
import { json } from '../printing.ts';

export const run: Run = async (call) => {
  if (!has(call, 'to')) return refuse('found no format; expected --to geojson');
  const read = await analysePlan(call.positionals[0]!, call.values.get('variant'));
  if (!read.ok) return read;
  // Turf takes longer to load than most layouts take to compute.
  const { toGeoJson } = await import('../../src/export/geojson.ts');
  return good({ text: json(toGeoJson(read.value.analysis)) });
};
