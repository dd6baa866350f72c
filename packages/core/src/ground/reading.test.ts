/** The limits of what a street file may hold: the figures themselves are in bounds, one more is not. */
import { expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { ORIGIN, from, courseThrough } from '../testing/courses.ts';
import { type Assembly, createAssembly } from './assemble.ts';
import { createLeftOut } from './collect.ts';
import { corridorOf } from './corridor.ts';
import type { GroundPoint } from './ground.ts';
import { MOST } from './limits.ts';
import { type Reading, boundOver, holdToLimits } from './reading.ts';

const corridor = corridorOf([courseThrough([ORIGIN, from(ORIGIN, 90, 1000)])], 300);
const reading = (fill: (assembly: Assembly) => void): Reading => {
  const assembly = createAssembly(corridor);
  fill(assembly);
  return { file: 'town.osm', assembly, leftOut: createLeftOut('town.osm'), headTime: '', newestTime: '', fault: null };
};
const GATE: GroundPoint = { id: 'node/1', tags: { barrier: 'gate' }, lon: ORIGIN[0], lat: ORIGIN[1] };

const CASES: readonly (readonly [
  what: string,
  fill: (assembly: Assembly, count: number) => void,
  most: number,
  words: string,
])[] = [
  [
    'nodes',
    ({ counts }, count) => (counts.nodes = count),
    MOST.nodes,
    'The street file has more than 20,000,000 nodes.',
  ],
  ['ways', ({ counts }, count) => (counts.ways = count), MOST.ways, 'The street file has more than 500,000 ways.'],
  [
    'ways that wait',
    ({ waitingWays }, count) => {
      for (let id = 0; id < count; id++) waitingWays.push({ id, tags: {} });
    },
    MOST.waiting,
    'The street file has more than 500,000 ways.',
  ],
  [
    'relations',
    ({ counts }, count) => (counts.relations = count),
    MOST.relations,
    'The street file has more than 500,000 relations.',
  ],
  [
    'streets and points beside the courses',
    ({ points }, count) => {
      for (let k = 0; k < count; k++) points.push(GATE);
    },
    MOST.kept,
    'More than 200,000 streets, areas and points lie beside the courses.',
  ],
];

it.each(CASES)('%s are held to their limit', (_, fill, most, words) => {
  const [full, over] = [0, 1].map((more) => reading((assembly) => fill(assembly, most + more)));
  for (const one of [full!, over!]) holdToLimits(one);
  expect([boundOver(full!.assembly), full!.fault]).toEqual([null, null]);
  expect(findingLine(over!.fault!)).toBe(`town.osm: ${words} Save a smaller extract around the courses.`);
});

it('the first reason to refuse a file stays', () => {
  const over = reading(({ counts }) => (counts.nodes = MOST.nodes + 1));
  holdToLimits(over, () => ({ line: 7, column: 3 }));
  over.assembly.counts.nodes = 0;
  over.assembly.counts.relations = MOST.relations + 1;
  holdToLimits(over, () => ({ line: 9, column: 1 }));
  expect(findingLine(over.fault!)).toContain('town.osm:7:3: The street file has more than 20,000,000 nodes.');
});
