/** Distances along a course as they are typed outside a plan. */
import type { Units } from '@halfcup/core/plan';
import { metres, parseLength } from '@halfcup/core/units';

/** Metres of a distance as it is typed, in km or miles where it has no unit; `null`: it is none. */
export function typedDistance(text: string, units: Units): number | null {
  const plain = text.trim().replace(',', '.');
  if (/^\d+(\.\d+)?$/u.test(plain)) return metres(Number(plain), units === 'metric' ? 'km' : 'mi');
  const parsed = parseLength(plain);
  return parsed.ok ? parsed.value : null;
}
