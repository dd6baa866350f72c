/** Tables that hold too few cups at several stations, as one finding: where the field is larger than the tables, it is so all along. */
import type { Finding } from '../finding.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import { racedayFinding } from './racedayFinding.ts';

type Room = RacedayParams['pre-pour-room'];

const roomOf = ({ params }: Finding): Room => params as unknown as Room;
const shortBy = (finding: Finding): number => roomOf(finding).wanted - roomOf(finding).hold;

/** The findings of stations, those of too little room as one at the first of them, with all in its parameters. */
export function oneOfRoom(findings: readonly Finding[]): readonly Finding[] {
  const short = findings.filter(({ code }) => code === 'pre-pour-room').sort((a, b) => shortBy(b) - shortBy(a));
  const [worst] = short;
  if (worst === undefined || short.length === 1) return findings;
  const all = short.map((finding) => {
    const { drink, hold, wanted } = roomOf(finding);
    return { station: finding.where.station!, drink, hold, wanted };
  });
  const [{ station }] = all as [(typeof all)[0]];
  const alone = all.every((one) => one.station === station) ? { station } : {};
  const one = racedayFinding(
    'pre-pour-room',
    { ...roomOf(worst), all },
    {
      severity: worst.severity,
      where: { path: '/stations', ...alone },
      measured: worst.measured!,
      limit: worst.limit!,
      unit: worst.unit!,
    },
  );
  const first = findings.findIndex(({ code }) => code === 'pre-pour-room');
  return findings.flatMap((finding, k) => (k === first ? [one] : finding.code === 'pre-pour-room' ? [] : [finding]));
}
