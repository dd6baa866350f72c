/** What the readers of all formats share: where they put what they read, and how they stop. */
import type { Finding, Where } from '../finding.ts';
import { foundOf } from '../text/found.ts';
import type { GroundBound, GroundParams } from '../text/params/ground.ts';
import type { Assembly } from './assemble.ts';
import type { LeftOut } from './collect.ts';
import { groundFinding } from './groundFinding.ts';
import { MOST } from './limits.ts';

export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Takes the bytes of a file, cut anywhere. */
export interface BytesReader {
  readonly write: (chunk: Uint8Array) => void;
  readonly close: () => void;
}

/** One reading of a file of nodes, ways and relations. */
export interface Reading {
  readonly file: string;
  readonly assembly: Assembly;
  readonly leftOut: LeftOut;
  /** Day and time of the data as the head of the file has it, and the newest of an element. */
  headTime: string;
  newestTime: string;
  fault: Finding | null;
}

/** Ids that are kept are no larger, either way: differences of such numbers, doubled, are still whole ones. */
const LARGEST_ID = 2 ** 49;

/** An id that no element has: it stands for what is no id. */
export const NO_ELEMENT: number = 2 ** 50;

export const isId = (id: number): boolean => Number.isSafeInteger(id) && Math.abs(id) <= LARGEST_ID;

/** What is said of an element whose id is none. */
export const wrongId = (element: string, found: string | number | undefined): GroundParams['ground-element'] => ({
  problem: 'id',
  element,
  found: foundOf(found),
  most: LARGEST_ID,
});

/** Ends the reading, with a reason; the first one stays. */
export function refuse<C extends keyof GroundParams>(
  reading: Reading,
  code: C,
  params: GroundParams[C],
  place: Pick<Where, 'line' | 'column'> = {},
): void {
  reading.fault ??= groundFinding(code, params, { severity: 'error', where: { file: reading.file, ...place } });
}

/** What there is too much of, `null` where all is within its limits. */
export function boundOver({ counts, ways, areas, points, waitingWays }: Assembly): GroundBound | null {
  if (counts.nodes > MOST.nodes) return 'nodes';
  if (counts.ways > MOST.ways || waitingWays.length > MOST.waiting) return 'ways';
  if (counts.relations > MOST.relations) return 'relations';
  return ways.length + areas.length + points.length > MOST.kept ? 'kept' : null;
}

/** Refuses a file that holds too much. */
export function holdToLimits(reading: Reading, place: () => Pick<Where, 'line' | 'column'> = () => ({})): void {
  const bound = boundOver(reading.assembly);
  if (bound === null) return;
  const most = bound === 'ways' ? Math.min(MOST.ways, MOST.waiting) : MOST[bound as 'nodes' | 'relations' | 'kept'];
  refuse(reading, 'ground-limit', { bound, most }, place());
}
