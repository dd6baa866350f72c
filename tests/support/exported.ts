/** Plans analysed as the command line does, to be exported by the library and read back by others. */
import { type Analysis, type Finding, analyse } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import type { Result } from '../../packages/core/src/finding.ts';
import { readPlan } from '../../packages/core/src/plan/read.ts';
import type { Source } from './fixtures.ts';

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.findings.map(({ message }: Finding) => message).join('\n'));
  return result.value;
}

export function analysisOf({ plan, gpx }: Source): Analysis {
  const sources = new Map(Object.entries(gpx).map(([file, text]) => [file, must(readGpx(text, file))]));
  return must(analyse(must(readPlan(plan, 'plan.json')).plan, { gpx: sources }));
}

/** Texts that break what is careless: markup, quotes, formulas, line ends, other directions, pictures, controls, length. */
export const HOSTILE: readonly string[] = [
  '<script>alert("1")</script> & \'x\' ]]>',
  "=cmd|' /C calc'!A0",
  '@SUM(1+1)*cmd',
  '+1-555',
  '-2+3',
  "'=already",
  'two\r\nEND:VEVENT\r\nlines; and, a \\ "quote"',
  'محطة الماء \u202Eabc\u2066 עברית',
  '🚰🏃‍♀️ Água ʤ',
  'bell\u0007 tab\u000B nul\u0000 del\u007F nel\u0085 last\uFFFF',
  '𝒙🚰é'.repeat(67).slice(0, 200),
];
