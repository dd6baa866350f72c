/** Who is on the roster at each station, beside the crew that the day needs. */
import type { RosterRow } from '../../src/raceday/rostered.ts';
import { formatMinute } from '../../src/format.ts';
import type { View } from '../findings.ts';
import { table } from '../tables.ts';
import { NONE, page, section } from './blocks.ts';

const HEAD = ['Station', ' On the roster', ' Fewest there', 'From', ' Needed', ' Missing'];

export const rosterText = (rows: readonly RosterRow[], { names, screen }: View): string =>
  page(
    [
      section(
        'Crew on the roster, and needed',
        table(
          HEAD,
          rows.map(({ station, listed, there, at, needed }) => [
            names.station(station),
            String(listed),
            String(there),
            formatMinute(at),
            String(needed),
            there >= needed ? NONE : String(needed - there),
          ]),
          screen,
        ),
        screen,
        'The captain named at a station counts as there. Names stay in the plan; no export but the sign-in sheet has them.',
      ),
    ],
    screen,
  );
