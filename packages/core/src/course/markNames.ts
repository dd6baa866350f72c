/**
 * Course distances that names tell: "10 km", "km 10", "mile 6", "6 mi", "12k", as waypoints of surveyed
 * marks are called.
 */
import { metres } from '../units.ts';

const NUMBER = '(\\d+(?:[.,]\\d+)?)';
const BEFORE = new RegExp(`^${NUMBER}\\s*(km?|kilomet(?:re|er)s?|mi|miles?)\\.?$`, 'i');
const AFTER = new RegExp(`^(km|kilomet(?:re|er)|mi|mile)\\.?\\s*${NUMBER}$`, 'i');

/** Metres that a mark's name says, or `null` where it says no distance. */
export function measureOfName(name: string): number | null {
  const before = BEFORE.exec(name.trim());
  const after = AFTER.exec(name.trim());
  const [digits, unit] = before === null ? [after?.[2], after?.[1]] : [before[1], before[2]];
  if (digits === undefined || unit === undefined) return null;
  return metres(Number(digits.replace(',', '.')), unit.toLowerCase().startsWith('k') ? 'km' : 'mi');
}
