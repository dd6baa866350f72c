/** Verdicts on recorded points as a table for people. */
import type { PlacedVerdict, Verdict } from '../../src/review/placed.ts';
import { itemWord } from '../../src/station/wording.ts';
import type { Finding } from '../../src/finding.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { PlacedStation } from '../../src/review/placedStation.ts';
import type { UnitSystem } from '../../src/units.ts';
import type { View } from '../findings.ts';
import { paragraph } from '../lineBreaks.ts';
import { counted } from '../messages.ts';
import { table } from '../tables.ts';
import { NONE, section } from './blocks.ts';

const VERDICTS: { readonly [verdict in Verdict]: string } = {
  holds: 'OK',
  fails: 'out of place',
  'cannot tell': 'unclear',
};

/** A line each: distance with its error, limits, verdict, and how far to move it. */
export function placedText(verdicts: readonly PlacedVerdict[], { units, names, screen }: View): string {
  if (verdicts.length === 0)
    return paragraph(
      'Recorded on the ground: no sign and no trash drop among the points could be compared with the plan.',
      screen.width,
    );
  const head = ['Station', 'Item', 'Verdict', ' Distance', ' ±', ' Should be', ' Move', 'Measured by', 'Side'];
  return section(
    'Recorded on the ground',
    table(
      head,
      verdicts.map((one) => row(one, units, names.station(one.station))),
      screen,
    ),
    screen,
    'Distance: of a sign to the first table, of trash from the end of the last.',
  );
}

/** A line for each recorded station: where it should be, where it is, how far that is, and what the review finds of it there. */
export function builtText(
  stations: readonly PlacedStation[],
  findings: readonly Finding[],
  { units, names, screen }: View,
): string {
  if (stations.length === 0) return '';
  const far = (metres: number | null): string => (metres === null ? 'off the course' : formatMeasure(metres, units));
  const rows = stations.map(({ station, distance, margin, measures, verdict }) => {
    const found = findings.filter((one) => one.built === true && one.where.station === station).length;
    return [
      names.station(station),
      far(measures[0]),
      far(measures[1]),
      long(distance, units),
      long(margin, units),
      VERDICTS[verdict],
      found === 0 ? NONE : counted(found, 'new finding'),
    ];
  });
  const head = ['Station', ' Planned at', ' Recorded at', ' Apart', ' ±', 'Verdict', 'What changes'];
  return section(
    'As built',
    table(head, rows, screen),
    screen,
    'Apart: of the first table recorded, from its planned place.',
  );
}

const long = (metres: number, units: UnitSystem): string => formatLength(metres, units, 'wheel', 1);

function row(
  { item, end, verdict, measured, limit, margin, move, by, reference, side }: PlacedVerdict,
  units: UnitSystem,
  station: string,
): string[] {
  const what = `${itemWord(item)}${end === undefined ? '' : end === 'from' ? ', beginning' : ', end'}`;
  const moved = verdict === 'holds' ? NONE : `${long(Math.abs(move), units)} ${move > 0 ? 'downstream' : 'upstream'}`;
  const limits = `${long(limit[0], units).split(' ')[0]} to ${long(limit[1], units)}`;
  return [
    station,
    what,
    VERDICTS[verdict],
    long(measured, units),
    long(margin, units),
    limits,
    moved,
    by === 'wheel' ? 'wheel' : reference === 'planned' ? 'position, to the planned table' : 'position',
    side,
  ];
}
