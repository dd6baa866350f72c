/** Remedies of the page: on plans with planted mistakes each does away with its finding, brings no error, and is one step of undo. */
import type { Finding } from '@halfcup/core';
import { describe, expect, it } from 'vitest';
import type { GoodPlan } from '../packages/core/src/testing/planted/build.ts';
import { goodPlan, type PlanName } from '../packages/core/src/testing/planted/goodPlans.ts';
import { groundText } from '../packages/core/src/ground/groundText.ts';
import { TOWN_MISTAKES, groundTown, townFiles, townPlan } from '../packages/core/src/testing/planted/groundTown.ts';
import { PLANTED } from '../packages/core/src/testing/planted/all.ts';
import {
  type Plant,
  all,
  byHand,
  ofStation,
  stationIn,
  swappedPair,
} from '../packages/core/src/testing/planted/planted.ts';
import { REMEDIED, type Remedy, applyRemedy, remediesOf } from '../packages/viewer/src/state/edits/remedies.ts';
import { run, showVariant, undo } from '../packages/viewer/src/state/edits/workbench.ts';
import { openFiles } from '../packages/viewer/src/state/open/open.ts';
import { receive } from '../packages/viewer/src/state/open/receive.ts';
import { type OpenPlan, type Store, createStore } from '../packages/viewer/src/state/store/store.ts';
import { openedFrom, textFile } from '../packages/viewer/src/testing.ts';

interface Case {
  readonly plan: PlanName | 'boulevard' | 'town';
  readonly plant: Plant;
  /** Of the mistake in a town. */
  readonly mistake?: string;
  readonly code: string;
  readonly station?: string;
  readonly label: string;
  /** Codes of what the edit rightly brings to light. */
  readonly reveals?: readonly string[];
}

/** A mistake that core's own tests plant. */
function planted(name: string): Pick<Case, 'plan' | 'plant'> {
  const found = Object.values(PLANTED)
    .flat()
    .find((one) => one.name === name);
  if (found === undefined) throw new Error(`no planted mistake “${name}”`);
  return found;
}

/** Nobody has said for whom the Observatory is. */
const unlisted: Plant = (plan) => {
  delete stationIn(plan, 'b3').passes;
};

/** A mistake in a town with a map, whose remedy is to move the station. */
const inTown = (name: string, how: string): Case => {
  const { code } = TOWN_MISTAKES.find((one) => one.name === name)!;
  return { plan: 'town', mistake: name, plant: () => undefined, code, station: 's1', label: `Move the station ${how}` };
};

const CASES: readonly Case[] = [
  ...(['crosses-flow', 'served-both-ways'] as const).map((code): Case => ({
    ...planted('the Bandstand serves both flows'),
    code,
    station: 'b1',
    label: 'Give the other way tables across the road',
  })),
  {
    ...planted('the sign of the Boathouse is 40 m ahead'),
    code: 'sign-distance',
    station: 'c1',
    label: 'Place the sign by the rules',
  },
  {
    plan: 'loop',
    plant: ofStation('s4', { practice: { signAhead: '60 m' } }),
    code: 'sign-distance',
    station: 's4',
    label: 'Use the plan’s sign distance',
  },
  {
    plan: 'loop',
    plant: all(byHand('s4', 'sign', -40), ofStation('s4', { practice: { signAhead: '40 m' } })),
    code: 'sign-distance',
    station: 's4',
    label: 'Place the sign by the rules',
  },
  {
    ...planted('the boxes of Limekiln are dragged to 30 m'),
    code: 'box-distance',
    station: 'd2',
    label: 'Place the trash boxes by the rules',
  },
  {
    plan: 'loop',
    plant: ofStation('s4', { practice: { trashFrom: '20 m', trashTo: '60 m' } }),
    code: 'box-distance',
    station: 's4',
    label: 'Use the plan’s box distances',
  },
  {
    ...planted('the gel of the Ropewalk is put behind the water'),
    code: 'item-order',
    station: 's3',
    label: 'Place the gel by the rules',
  },
  {
    ...planted('the water of Mole Head is put on the sports drink'),
    code: 'items-on-top',
    station: 's5',
    label: 'Place the water by the rules',
  },
  {
    ...planted('the boxes of the Bandstand stand across the road, by those who come back'),
    code: 'item-across',
    station: 'b1',
    label: 'Place the trash boxes by the rules',
  },
  {
    plan: 'loop',
    plant: byHand('s4', 'sign', -90, 120),
    code: 'item-off-course',
    station: 's4',
    label: 'Place the sign by the rules',
  },
  {
    ...planted('the sign of the Weighhouse stands in the road'),
    code: 'sign-in-road',
    station: 's4',
    label: 'Place the sign by the rules',
  },
  {
    ...planted('Samphire Lane has no boxes'),
    code: 'boxes-missing',
    station: 's2',
    label: 'Put up boxes by the rules',
  },
  { ...planted('Curlew Road has 1 boxes for all its cups'), code: 'boxes-few', station: 's1', label: 'Put up 2 boxes' },
  {
    ...planted('the Palm House serves gel and gives it no table'),
    code: 'tables-mismatch',
    station: 'b2',
    label: 'Put up tables of gel by the rules',
  },
  {
    ...planted('the Palm House serves gel and gives it no table'),
    code: 'tables-mismatch',
    station: 'b2',
    label: 'Stop serving gel',
  },
  {
    plan: 'loop',
    plant: ofStation('s4', { tables: { gel: 2 } }),
    code: 'tables-mismatch',
    station: 's4',
    label: 'Remove the 2 tables of gel',
  },
  {
    plan: 'loop',
    plant: ofStation('s4', { tables: { gel: 2 } }),
    code: 'tables-mismatch',
    station: 's4',
    label: 'Serve gel',
  },
  ...(['left', 'right'] as const).map((side): Case => ({
    plan: 'point',
    plant: (plan, ground) => {
      const station = stationIn(plan, 'p1');
      const { course, measure } = ground.foot('p1');
      delete station.side;
      station.at = ground.at(course, measure, 0);
    },
    code: 'side-unclear',
    station: 'p1',
    label: `Tables on the ${side}`,
  })),
  {
    ...planted('Tern Quay is declared on the right'),
    code: 'side-contradicted',
    station: 'p1',
    label: 'Tables on the left, by the pin',
  },
  {
    ...planted('the Boathouse’s pin is across the road'),
    code: 'side-contradicted',
    station: 'c1',
    label: 'Move the pin to the left',
  },
  {
    ...planted('longitude and latitude of the fire station gate are swapped'),
    code: 'far-from-courses',
    label: 'Exchange longitude and latitude',
  },
  {
    ...planted('longitude and latitude of the Charcoal Yard’s supplies are swapped'),
    code: 'far-from-courses',
    label: 'Exchange longitude and latitude',
  },
  {
    plan: 'point',
    plant: (plan) => {
      for (const station of plan.stations) for (const point of station.points) point.at = swappedPair(point.at);
    },
    code: 'far-from-courses',
    label: 'Exchange longitude and latitude of all 16',
  },
  {
    plan: 'point',
    plant: (plan) => {
      const station = stationIn(plan, 'p9');
      station.at = swappedPair(station.at!);
    },
    code: 'station-off-course',
    station: 'p9',
    label: 'Exchange longitude and latitude',
  },
  {
    ...planted('nobody has said that the Palm House is not for the way back'),
    code: 'seen-not-served',
    station: 'b2',
    label: 'Confirm: only these are served',
  },
  { plan: 'boulevard', plant: () => undefined, code: 'seen-not-served', station: 'm', label: 'Serve them too' },
  {
    plan: 'outBack',
    plant: unlisted,
    code: 'lead-far',
    station: 'b3',
    label: 'Confirm: the tables are for Mall Run at 8.65 km',
  },
  {
    plan: 'boulevard',
    plant: (plan) => {
      stationIn(plan, 'm').passes = [{ race: 'r', pass: 0 }];
      stationIn(plan, 'm').at = [0.05, 0.00035];
      delete stationIn(plan, 'm').side;
    },
    code: 'lead-far',
    station: 'm',
    label: 'Lay the tables out for Boulevard Run at 16.73 km',
  },
  {
    ...planted('the Observatory serves the way out, from the kerb of the way back'),
    code: 'side-contradicted',
    station: 'b3',
    label: 'Lay the tables out for Mall Run at 8.65 km',
  },
  {
    ...planted('Mill Race forgets the short race'),
    code: 'passers-not-served',
    station: 'd4',
    label: 'Serve Short Dovecote too',
  },
  {
    ...planted('the Sluice lists two of three laps'),
    code: 'passers-not-served',
    station: 'c2',
    label: 'Serve them too',
  },
  { ...planted('stations of the coast may be 9 km apart'), code: 'rule-loose', label: 'Restore the usual value' },
  {
    ...planted('tables of the Fold may stand on 15 %'),
    code: 'rule-loose',
    station: 't2',
    label: 'Restore the usual value',
  },
  {
    ...planted('a sign 45 m off is let pass by a tolerance of 60 m'),
    code: 'rule-loose',
    label: 'Restore the usual value',
    reveals: ['sign-distance'],
  },
  inTown('tables in the mouth of Mill Lane', '11 m forward'),
  inTown('tables on a bridge', '20 m forward'),
  inTown('tables in a tunnel', '40 m forward'),
  inTown('tables on steps', '9 m back'),
  inTown('tables by the rails', '2 m forward'),
  inTown('tables at a bus stop', '12 m forward'),
  inTown('tables on a pedestrian crossing', '4 m forward'),
  inTown('tables over a hydrant', '7 m forward'),
  inTown('tables before a fire station', '28 m forward'),
  inTown('tables before a hospital', '36 m forward'),
  inTown('a station where the map has 3.5 m of road, and the plan no width', '50 m forward'),
  ...(['cool', 'warm', 'hot'] as const).map((heat): Case => ({
    plan: 'loop',
    plant: (plan) => {
      delete plan.supplies['heat'];
      delete plan.supplies['wbgtC'];
    },
    code: 'heat-assumed',
    label: `Plan for ${heat} weather`,
  })),
];

/** A finding without its figures. */
const keyOf = ({ code, where }: Finding): string =>
  [code, where.station, where.race, where.course, where.item].map((part) => part ?? '').join(' ');

const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** Out on one side of a boulevard and back on the other, 35 m apart; one station between the two. */
function boulevard(): Pick<GoodPlan, 'text' | 'files'> {
  const line = [
    [0, 0],
    [0.1, 0],
    [0.1, 0.00032],
    [0, 0.00032],
  ];
  const text = {
    format: 'halfcup-plan',
    version: 1,
    name: 'Boulevard',
    courses: [{ id: 'c', name: 'Boulevard', line, drawn: 'centre' }],
    races: [{ id: 'r', name: 'Boulevard Run', course: 'c' }],
    stations: [{ id: 'm', name: 'Median', at: [0.05, 0.00012] }],
  };
  return { text: text as unknown as GoodPlan['text'], files: {} };
}

/** The files of a plan in a town with the mistake of that name. */
function townFilesOf(name: string): Record<string, string> {
  const [plan, town] = [townPlan(), groundTown()];
  TOWN_MISTAKES.find((one) => one.name === name)!.plant(plan, town);
  const { text, ground } = townFiles(plan, town);
  return { 'plan.json': text, 'ground.geojson': groundText(ground) };
}

function planFiles({ plan, plant }: Pick<Case, 'plan' | 'plant'>): Record<string, string> {
  const own = plan === 'boulevard' || plan === 'town';
  const good = { ...goodPlan(own ? 'loop' : plan), ...(own ? boulevard() : {}) };
  const [text, files] = [copy(good.text), copy(good.files)];
  plant(text, good.ground, files);
  return { 'plan.json': JSON.stringify(text, null, 2), ...files };
}

function opened(given: Pick<Case, 'plan' | 'plant' | 'mistake'>): Store {
  const named = Object.entries(given.mistake === undefined ? planFiles(given) : townFilesOf(given.mistake));
  const store = createStore();
  receive(
    store,
    named.map(([name]) => name),
    {
      kind: 'opened',
      plan: openedFrom(
        openFiles(
          named.map(([name, content]) => textFile(name, content)),
          null,
        ),
      ),
    },
  );
  return store;
}

const now = (store: Store): OpenPlan => store.open.value!;
const errorsOf = (open: OpenPlan): string[] =>
  open.findings.filter(({ severity }) => severity === 'error').map((finding) => keyOf(finding));
const isIt =
  ({ code, station }: Case) =>
  (finding: Finding): boolean =>
    finding.code === code && (station === undefined || finding.where.station === station);

function labelled(given: Case, open: OpenPlan): Remedy {
  const finding = open.findings.find(isIt(given));
  if (finding === undefined) throw new Error(`no ${given.code}: ${open.findings.map((one) => keyOf(one)).join('; ')}`);
  const remedies = remediesOf(open, finding, 'metric');
  if (!remedies.some(({ label }) => label === given.label))
    throw new Error(`no “${given.label}” among: ${remedies.map(({ label }) => label).join(' | ')}`);
  return remedies.find(({ label }) => label === given.label)!;
}

describe('a remedy', () => {
  it.each(
    CASES.map(
      (given) =>
        [`${given.code}: ${given.label}, ${given.plan} ${given.mistake ?? given.station ?? ''}`, given] as const,
    ),
  )('does away with %s', (_, given) => {
    const store = opened(given);
    const before = now(store);
    const { command, done } = labelled(given, before);
    expect(run(store, command)).toEqual([]);
    expect(store.history.value.past).toHaveLength(1);
    expect(done).toMatch(/^[A-Z].*\.$/u);
    expect(now(store).findings.filter(isIt(given))).toEqual([]);
    const known = new Set(errorsOf(before));
    const fresh = now(store).findings.filter(
      (finding) =>
        finding.severity === 'error' && !known.has(keyOf(finding)) && given.reveals?.includes(finding.code) !== true,
    );
    expect(fresh.map((finding) => keyOf(finding))).toEqual([]);
    undo(store);
    expect(now(store).document.text).toBe(before.document.text);
  });

  it('names the error that it brings', () => {
    const store = opened(planted('a sign 45 m off is let pass by a tolerance of 60 m'));
    const finding = now(store).findings.find(({ code }) => code === 'rule-loose')!;
    const [restore] = remediesOf(now(store), finding, 'metric');
    expect(applyRemedy(store, restore!)).toEqual({
      done: 'The usual value holds again.',
      brings: expect.stringMatching(/^The sign is 45 m .*[^.]$/u),
    });
  });

  it('is offered neither for what is waived nor for what stands on the ground', () => {
    const open = now(opened(planted('the sign of the Boathouse is 40 m ahead')));
    const finding = open.findings.find(({ code }) => code === 'sign-distance')!;
    expect(remediesOf(open, finding, 'metric')).toHaveLength(1);
    expect(remediesOf(open, { ...finding, built: true }, 'metric')).toEqual([]);
    expect(remediesOf(open, { ...finding, waived: { by: 'Ada Kelp', reason: 'seen' } }, 'metric')).toEqual([]);
  });

  it('changes the variant that is shown, and not the plan; what the plan would show through is not offered', () => {
    const good = planted('the sign of the Boathouse is 40 m ahead');
    const store = opened({
      plan: good.plan,
      plant: all(good.plant, ofStation('c2', { boxes: 0 }), (plan) => {
        Object.assign(plan, { variants: [{ name: 'other', stations: {} }] });
      }),
    });
    expect(showVariant(store, 'other')).toEqual([]);
    const of = (code: string): Finding | undefined => now(store).findings.find((one) => one.code === code);
    expect(remediesOf(now(store), of('boxes-missing')!, 'metric')).toEqual([]);
    const [remedy] = remediesOf(now(store), of('sign-distance')!, 'metric');
    expect(applyRemedy(store, remedy!)).toEqual({ done: 'The sign stands by the rules.', brings: null });
    expect(of('sign-distance')).toBeUndefined();
    expect(showVariant(store, null)).toEqual([]);
    expect(of('sign-distance')).toBeDefined();
  });

  it('is tested for every code that has one', () => {
    expect([...new Set(CASES.map(({ code }) => code))].toSorted()).toEqual(REMEDIED.toSorted());
  });
});
