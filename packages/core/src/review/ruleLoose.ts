/**
 * Rules of the practice that are looser than the usual, plan-wide or at a station: a rule that is bent hides what it would find.
 * Those that hide something are told apart: the checks of the rule run again with the usual value.
 */
import type { Layout, StationLayout } from '../layout/layout.ts';
import { DEFAULT_CREW, DEFAULT_PRACTICE } from '../plan/defaults.ts';
import type { Practice } from '../plan/plan.ts';
import type { CrewRule, LooseRule, RuleName } from '../text/params/reviewAbsence.ts';
import { bendNearTables } from './bendNearTables.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { clearWidth } from './clearWidth.ts';
import { gradeAtTables } from './grades.ts';
import { legLong } from './legs.ts';
import { sideChange } from './sideChange.ts';
import { signDistance } from './signDistance.ts';
import { WIDEST } from './tablesFarOff.ts';

/** Other units round a rule: a share of the usual value that is no looseness. */
const ROUNDED = 0.05;

/** A first or a last box that stands nearer than this share of the usual is among the tables: a warning by itself. */
const GRAVE_TRASH = 0.5;
const TRASH: ReadonlySet<RuleName> = new Set(['trashFrom', 'trashTo']);
/** Rules of the crew of which 0 leaves nobody there. */
const CREW: readonly CrewRule[] = ['pourers', 'minimum'];

/** A rule of the practice. */
type PracticeRule = LooseRule & { readonly rule: Exclude<RuleName, CrewRule> };

interface Usual {
  readonly rule: Exclude<RuleName, CrewRule>;
  /** Which values are looser than the usual. */
  readonly looser: 'more' | 'less';
  /** Of a rule that is no looser for being larger: values that no road has, a warning whatever comes of them. */
  readonly absurd?: (value: number) => boolean;
  /** How many errors and warnings the usual value would give that are not found now. */
  readonly hidden: (layout: Layout, loose: PracticeRule) => number;
}

const grave = (layout: Layout, checks: readonly Check[]): number =>
  checks.flatMap((one) => one.find(layout)).filter(({ severity }) => severity !== 'note').length;

/** The layout as it is judged with the usual value of a rule, plan-wide or at the station: items stay where they are. */
function withUsual(layout: Layout, { rule, station, usual }: PracticeRule): Layout {
  const set = (practice: Practice): Practice => ({ ...practice, [rule]: usual });
  const holds = (one: StationLayout): boolean =>
    station === null ? one.station.practice[rule] === undefined : one.id === station;
  return {
    ...layout,
    plan: station === null ? { ...layout.plan, practice: set(layout.plan.practice) } : layout.plan,
    stations: layout.stations.map((one) => (holds(one) ? { ...one, practice: set(one.practice) } : one)),
  };
}

const byChecks =
  (...checks: readonly Check[]): Usual['hidden'] =>
  (layout, loose) =>
    Math.max(0, grave(withUsual(layout, loose), checks) - grave(layout, checks));

const stationsOf = ({ stations }: Layout, { rule, station }: PracticeRule): StationLayout[] =>
  stations.filter((one) => (station === null ? one.station.practice[rule] === undefined : one.id === station));

/** Stations that no served course passes within the usual distance. */
const offCourse: Usual['hidden'] = (layout, loose) =>
  stationsOf(layout, loose).filter(
    ({ passes }) => passes.length > 0 && passes.every(({ distance }) => distance > loose.usual),
  ).length;

/** Stations whose side is taken from a pin that the usual certainty would leave unclear. */
const unsure: Usual['hidden'] = (layout, loose) =>
  stationsOf(layout, loose).filter(
    ({ declared, passes }) =>
      declared === null &&
      passes.some(({ served, side, confidence }) => served && side !== 'unclear' && confidence < loose.usual),
  ).length;

const none: Usual['hidden'] = () => 0;

/** Farther from a road's line, or from its edge, than any road is wide. */
const isFarOff = (value: number): boolean => value > WIDEST;

const USUAL: readonly Usual[] = [
  { rule: 'signAhead', looser: 'less', hidden: byChecks(signDistance) },
  { rule: 'signTolerance', looser: 'more', hidden: byChecks(signDistance) },
  { rule: 'trashFrom', looser: 'less', hidden: none },
  { rule: 'trashTo', looser: 'less', hidden: none },
  { rule: 'boxEvery', looser: 'more', hidden: none },
  { rule: 'kerb', looser: 'more', hidden: none, absurd: isFarOff },
  { rule: 'setback', looser: 'more', hidden: none, absurd: isFarOff },
  { rule: 'clearWidth', looser: 'less', hidden: byChecks(clearWidth) },
  { rule: 'snapRadius', looser: 'more', hidden: offCourse },
  { rule: 'sideConfidence', looser: 'less', hidden: unsure },
  { rule: 'maxSpacing', looser: 'more', hidden: byChecks(legLong) },
  { rule: 'minSpacing', looser: 'less', hidden: byChecks(sideChange) },
  { rule: 'maxGrade', looser: 'more', hidden: byChecks(gradeAtTables) },
  { rule: 'bendClear', looser: 'less', hidden: byChecks(bendNearTables) },
];

interface Loose extends LooseRule {
  readonly hidden: number;
  readonly absurd: boolean;
  readonly grave: boolean;
}

/** Crews without anybody to pour, or to open with: the plan's, then those of stations. */
function crewless(layout: Layout): Loose[] {
  return CREW.flatMap((rule) => {
    // Without a rule there is at least one: a pourer, or a crew.
    const usual = DEFAULT_CREW[rule] ?? 1;
    const given = [
      { station: null, value: layout.plan.crew[rule] },
      ...layout.stations.flatMap(({ id, station }) => {
        const value = station.crew[rule];
        return value === undefined ? [] : [{ station: id, value }];
      }),
    ];
    return given.flatMap(({ station, value }) =>
      value === 0 ? [{ rule, station, value, usual, hidden: 0, absurd: false, grave: true }] : [],
    );
  });
}

/** Values of a rule that are looser than usual: the plan's, then those of stations that are looser than that. */
function looseOf({ rule, looser, hidden, absurd }: Usual, layout: Layout): Loose[] {
  const usual = DEFAULT_PRACTICE[rule];
  const bound = usual * (looser === 'more' ? 1 + ROUNDED : 1 - ROUNDED);
  const isLoose = (value: number): boolean => absurd?.(value) ?? (looser === 'more' ? value > bound : value < bound);
  const given = [
    { station: null, value: layout.plan.practice[rule] },
    ...layout.stations.flatMap(({ id, station }) => {
      const value = station.practice[rule];
      return value === undefined ? [] : [{ station: id, value }];
    }),
  ];
  return given
    .filter(({ value }) => isLoose(value))
    .map(({ station, value }) => {
      const loose = { rule, station, value, usual };
      const grave = TRASH.has(rule) && value < usual * GRAVE_TRASH;
      return { ...loose, hidden: hidden(layout, loose), absurd: absurd !== undefined, grave };
    });
}

function caseOf(rules: readonly Loose[], severity: 'note' | 'warning'): Case<'rule-loose'>[] {
  if (rules.length === 0) return [];
  const hidden = rules.reduce((sum, loose) => sum + loose.hidden, 0);
  const [{ station }] = rules as [Loose];
  const alone = station !== null && rules.every((loose) => loose.station === station) ? { station } : {};
  return [
    {
      params: {
        rules: rules.map(({ rule, station: id, value, usual }) => ({ rule, station: id, value, usual })),
        hidden,
        ...(rules.some(({ absurd }) => absurd) ? { absurd: true } : {}),
        ...(severity === 'warning' && hidden === 0 ? { grave: true as const } : {}),
      },
      where: { path: '/practice', ...alone },
      severity,
      measured: hidden,
      limit: 0,
    },
  ];
}

export const ruleLoose: Check = check({ code: 'rule-loose', severity: 'note', source: COMMON_PRACTICE }, (layout) => {
  const loose = [...USUAL.flatMap((usual) => looseOf(usual, layout)), ...crewless(layout)];
  const isLoud = ({ hidden, grave }: Loose): boolean => hidden > 0 || grave;
  return [
    ...caseOf(
      loose.filter((one) => one.absurd),
      'warning',
    ),
    ...caseOf(
      loose.filter((one) => isLoud(one) && !one.absurd),
      'warning',
    ),
    ...caseOf(
      loose.filter((one) => !isLoud(one) && !one.absurd),
      'note',
    ),
  ];
});
