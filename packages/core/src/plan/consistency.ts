/** Values of a plan that are good each, but not together: ranges that are upside down, more trash boxes than anybody has. */
import type { Fault } from './fault.ts';
import type { Plan, PlanCourse, PlanPerson, PlanPrice, PlanStation, Practice } from './plan.ts';

const upsideDown = (path: Fault['path'], low: readonly [string, number], high: readonly [string, number]): Fault[] =>
  low[1] <= high[1]
    ? []
    : [
        {
          code: 'plan-value',
          path: [...path, high[0]],
          problem: { problem: 'rangeUpsideDown', low: `practice.${low[0]}`, from: low[1], to: high[1] },
        },
      ];

const RANGES = [
  ['trashFrom', 'trashTo'],
  ['minSpacing', 'maxSpacing'],
] as const;

/** Entrants of one wave, and of all waves together. */
export const MOST_ENTRANTS = 1_000_000;

/** Boxes that one trash stretch can have; each is a place in every output. */
export const MOST_BOXES = 1000;
/** Tables of one kind at one station. */
export const MOST_TABLES = 1000;
const BOXES = ['boxEvery', 'trashFrom', 'trashTo'] as const;

/** Trash boxes so near one another that a stretch has more than `MOST_BOXES`, where `given` has a say in it. */
function boxFaults({ boxEvery, trashFrom, trashTo }: Practice, given: Partial<Practice>, path: Fault['path']): Fault[] {
  const key = BOXES.find((one) => given[one] !== undefined);
  if (key === undefined || trashTo - trashFrom <= boxEvery * (MOST_BOXES - 1)) return [];
  const boxes = Math.floor((trashTo - trashFrom) / boxEvery) + 1;
  return [{ code: 'plan-value', path: [...path, key], problem: { problem: 'tooManyBoxes', boxes, most: MOST_BOXES } }];
}

/** What does not hold within a practice, of that which `given` has a say in. */
const practiceFaults = (practice: Practice, given: Partial<Practice>, path: Fault['path']): Fault[] => [
  ...RANGES.filter((keys) => keys.some((key) => given[key] !== undefined)).flatMap(([low, high]) =>
    upsideDown(path, [low, practice[low]], [high, practice[high]]),
  ),
  ...boxFaults(practice, given, path),
];

const partFaults = (course: PlanCourse, index: number): Fault[] =>
  (course.parts ?? []).flatMap((part, at) =>
    part.to !== undefined && part.to <= part.from
      ? [
          {
            code: 'plan-value' as const,
            path: ['courses', index, 'parts', at, 'to'],
            problem: { problem: 'partBackwards' as const, from: part.from, to: part.to },
          },
        ]
      : [],
  );

/** People who would leave before they come. */
const personFaults = ({ from, until }: PlanPerson, index: number): Fault[] =>
  from === undefined || until === undefined || until > from
    ? []
    : [
        {
          code: 'plan-value',
          path: ['people', 'crew', index, 'until'],
          problem: { problem: 'timesBackwards', from, to: until },
        },
      ];

/** A supply that is priced a second time. */
const priceFaults = ({ kind }: PlanPrice, index: number, all: readonly PlanPrice[]): Fault[] => {
  const before = all.findIndex((other) => other.kind === kind);
  return before === index
    ? []
    : [
        {
          code: 'plan-reference',
          path: ['prices', 'items', index, 'kind'],
          problem: { problem: 'twice', found: kind, number: before + 1 },
        },
      ];
};

/** More entrants in all waves together than race day can follow one by one, told at the wave that passes the limit. */
function entrantFaults(races: Plan['races']): Fault[] {
  let entrants = 0;
  for (const [race, { waves }] of races.entries())
    for (const [wave, one] of waves.entries()) {
      if (entrants <= MOST_ENTRANTS && entrants + one.entrants > MOST_ENTRANTS) {
        const all = races.reduce((sum, other) => other.waves.reduce((count, each) => count + each.entrants, sum), 0);
        const path = ['races', race, 'waves', wave, 'entrants'];
        return [
          { code: 'plan-value', path, problem: { problem: 'tooManyEntrants', entrants: all, most: MOST_ENTRANTS } },
        ];
      }
      entrants += one.entrants;
    }
  return [];
}

/** Faults between values of a plan that has been read. */
export function consistencyFaults(
  plan: Pick<Plan, 'courses' | 'races' | 'practice' | 'supplies' | 'people' | 'prices'> & {
    readonly stations: readonly Pick<PlanStation, 'practice'>[];
  },
): readonly Fault[] {
  const steps = plan.supplies.heatSteps;
  return [
    ...plan.courses.flatMap(partFaults),
    ...entrantFaults(plan.races),
    ...plan.stations.flatMap((station, index) =>
      practiceFaults({ ...plan.practice, ...station.practice }, station.practice, ['stations', index, 'practice']),
    ),
    ...practiceFaults(plan.practice, plan.practice, ['practice']),
    ...(plan.people?.crew ?? []).flatMap(personFaults),
    ...(plan.prices?.items ?? []).flatMap(priceFaults),
    ...(steps !== undefined && steps[0] > steps[1]
      ? [
          {
            code: 'plan-value' as const,
            path: ['supplies', 'heatSteps'],
            problem: { problem: 'heatStepsFall' as const, steps },
          },
        ]
      : []),
  ];
}
