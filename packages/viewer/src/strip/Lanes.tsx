/** One lane for each race of the course: the length of every leg between served stations. */
import type { Leg, RaceSpacing } from '@halfcup/core';
import type { JSX } from 'preact';
import { aboutLeg, isOpen } from '../state/view/derive.ts';
import { useStore, type OpenPlan } from '../state/store/store.ts';
import { longFigure } from '../words.ts';
import { LANE, LANES_Y } from './frame.ts';
import { legLabels, type StripScale } from './geometry.ts';

export function Lanes({
  races,
  open,
  scale,
}: {
  readonly races: readonly RaceSpacing[];
  readonly open: OpenPlan;
  readonly scale: StripScale;
}): JSX.Element {
  const { units } = useStore();
  const [low = 0] = scale.range();
  const flagOf = (race: RaceSpacing, leg: Leg): string => {
    const found = open.findings.find(
      (finding) =>
        isOpen(finding) &&
        aboutLeg(finding) &&
        finding.severity !== 'note' &&
        finding.where.race === race.race &&
        finding.where.measure === leg.end,
    );
    return found === undefined ? '' : `flag-${found.severity}`;
  };
  return (
    <g aria-hidden="true">
      {races.map((race, index) => {
        const y = LANES_Y + index * LANE + LANE / 2;
        return (
          <g key={race.race} class="strip-lane">
            {legLabels(race.legs, scale, (length) => longFigure(length, units.value)).map(
              ({ x, from, to, text, leg }) => (
                <g key={`${leg.from}-${leg.end}`}>
                  <path d={`M${from.toFixed(1)} ${y + 4}v3h${(to - from).toFixed(1)}v-3`} />
                  {text === '' ? null : (
                    <text class={flagOf(race, leg)} x={x} y={y + 3} text-anchor="middle">
                      {text}
                    </text>
                  )}
                </g>
              ),
            )}
            <text class="strip-lane-name" x={low} y={y - 7}>
              {races.length > 1 ? (open.analysis.plan.races.find((one) => one.id === race.race)?.name ?? '') : ''}
            </text>
          </g>
        );
      })}
    </g>
  );
}
