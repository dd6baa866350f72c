/** The joins between the parts of a course, as findings: one for all that are at one place, as of a lap run again and again. */
import type { Finding, LonLat } from '../finding.ts';
import type { Metres } from '../units.ts';
import type { LineParams } from '../text/params/course.ts';
import { lineFinding } from './lineFinding.ts';

/** Where one part ends and the next begins. */
export interface Seam {
  readonly from: LonLat;
  readonly to: LonLat;
  /** Of the whole course, in its running order. */
  readonly measure: Metres;
}

type Joined = LineParams['gap-joined'];

const isJoined = (finding: Finding): boolean => finding.code === 'gap-joined';

const isSame = (a: LonLat, b: LonLat): boolean => a[0] === b[0] && a[1] === b[1];

/** Whether a seam lies between two places, in either order: a course of parts may be run from its end. */
const isAt = ({ from, to }: Seam, gap: Joined): boolean =>
  (isSame(from, gap.from) && isSame(to, gap.to)) || (isSame(from, gap.to) && isSame(to, gap.from));

/** The findings on a course of parts, each join at a seam by its course distance, and once where it comes again. */
export function atSeams(findings: readonly Finding[], seams: readonly Seam[]): Finding[] {
  const told: Seam[] = [];
  return findings.flatMap((finding) => {
    if (!isJoined(finding)) return [finding];
    const params = finding.params as unknown as Joined;
    const here = seams.filter((seam) => isAt(seam, params));
    const [first] = here;
    if (first === undefined) return [finding];
    if (told.includes(first)) return [];
    told.push(first);
    const { severity, where, measured, limit, unit } = finding;
    const seam = { measure: first.measure, times: here.length };
    return [
      lineFinding(
        'gap-joined',
        { ...params, seam },
        {
          severity,
          where: { ...where, measure: first.measure },
          ...(measured === undefined ? {} : { measured }),
          ...(limit === undefined ? {} : { limit }),
          ...(unit === undefined ? {} : { unit }),
        },
      ),
    ];
  });
}
