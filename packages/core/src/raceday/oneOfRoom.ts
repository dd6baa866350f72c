/** One cause, one finding: tables that hold too few cups, or are longer than their place, are so at several stations of a large field. */
import type { Finding } from '../finding.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import { racedayFinding } from './racedayFinding.ts';

type Room = RacedayParams['pre-pour-room'];
type Long = RacedayParams['tables-room'];

const roomOf = ({ params }: Finding): Room => params as unknown as Room;
const longOf = ({ params }: Finding): Long => params as unknown as Long;

/** The findings of a code as one, where its first stands; `one` makes it of them, the worst first. */
function merged(
  findings: readonly Finding[],
  code: Finding['code'],
  badness: (finding: Finding) => number,
  one: (worst: Finding, all: readonly Finding[]) => Finding,
): readonly Finding[] {
  const found = findings.filter((finding) => finding.code === code).sort((a, b) => badness(b) - badness(a));
  const [worst] = found;
  if (worst === undefined || found.length === 1) return findings;
  const first = findings.findIndex((finding) => finding.code === code);
  return findings.flatMap((finding, k) => (k === first ? [one(worst, found)] : finding.code === code ? [] : [finding]));
}

/** Of the plan as a whole, or of the one station that all are of. */
function whereOf(all: readonly Finding[]): Finding['where'] {
  const [station] = all.map(({ where }) => where.station!);
  return { path: '/stations', ...(all.every(({ where }) => where.station === station) ? { station: station! } : {}) };
}

const values = ({
  severity,
  measured,
  limit,
  unit,
}: Finding): Pick<Finding, 'severity' | 'measured' | 'limit' | 'unit'> => ({
  severity,
  measured: measured!,
  limit: limit!,
  unit: unit!,
});

function roomOne(worst: Finding, short: readonly Finding[]): Finding {
  const all = short.map((finding) => {
    const { drink, hold, wanted } = roomOf(finding);
    return { station: finding.where.station!, drink, hold, wanted };
  });
  return racedayFinding('pre-pour-room', { ...roomOf(worst), all }, { ...values(worst), where: whereOf(short) });
}

function longOne(worst: Finding, long: readonly Finding[]): Finding {
  const stations = long.map(({ where }) => where.station!);
  const loudest = long.find(({ severity }) => severity === 'warning') ?? worst;
  return racedayFinding(
    'tables-room',
    { ...longOf(worst), stations },
    { ...values(worst), severity: loudest.severity, where: whereOf(long) },
  );
}

/** The findings of stations, those on too little room as one of each kind with all stations in its parameters. */
export const oneOfRoom = (findings: readonly Finding[]): readonly Finding[] =>
  merged(
    merged(findings, 'pre-pour-room', (finding) => roomOf(finding).wanted - roomOf(finding).hold, roomOne),
    'tables-room',
    (finding) => longOf(finding).length,
    longOne,
  );
