/** What is handed out by its names: as hands call it, and beside a supply in a list. */
import type { Served, SupplyKind } from '../kinds.ts';
import type { StationLayout } from '../layout/layout.ts';
import { servedOn } from '../layout/stretches.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Html, NONE, html, said } from './html.ts';

/** Kinds that have names, and the supply that they come in. */
const NAMED = { sportsDrink: 'sportsDrinkJug', gel: 'gels' } as const satisfies { [kind in Served]?: SupplyKind };

/** Names of a kind at a station; none where the plan gives none. */
function flavoursAt(plan: Plan, station: PlanStation, kind: Served): readonly string[] {
  return kind === 'water' ? [] : (suppliesOf(plan, station).flavours?.[kind] ?? []);
}

/** “Sports drink, Tide Lime!” “Water!”: a call for each name of the kinds that the station hands out. */
export function callsOf(plan: Plan, { station }: StationLayout, kinds: readonly Served[], text: SheetText): Html {
  const [open, close] = text.card.calls;
  const calls = servedOn(station)
    .filter((kind) => kinds.includes(kind))
    .flatMap((kind) => {
      const names = flavoursAt(plan, station, kind).map((name) => html`, ${said(name)}`);
      return (names.length === 0 ? [NONE] : names).map(
        (name) => html`<b class="call-out">${open}${text.frame.items[kind]}${name}${close}</b>`,
      );
    });
  return html`${calls.map((call, k) => html`${k === 0 ? '' : ' '}${call}`)}`;
}

/** " (Kelp Berry, Dune Honey)" behind a supply, each name once over these stations; nothing where there is none. */
export function flavoursNote(plan: Plan, stations: readonly PlanStation[], supply: SupplyKind): Html {
  const names = (['sportsDrink', 'gel'] as const)
    .filter((kind) => NAMED[kind] === supply)
    .flatMap((kind) =>
      stations.filter((one) => servedOn(one).includes(kind)).flatMap((one) => flavoursAt(plan, one, kind)),
    );
  const each = [...new Set(names)];
  return each.length === 0 ? NONE : html` (${each.map((name, k) => html`${k === 0 ? '' : ', '}${said(name)}`)})`;
}
