/**
 * Sorting of times that are nearly in order: a wave's runners arrive almost by rank. Runs between large
 * drops are put in order by insertion and merged; what is in no such order goes to the engine's own sort.
 */

/** Seconds by which a time must fall behind the one before for a new run to begin. */
const DROP = 30;
/** Shifts an element, on average, beyond which insertion costs more than it saves. */
const SHIFTS = 8;
const MOST_RUNS = 32;

/** Ascending times of several ascending lists; the very list where there is one. */
export function mergeSorted(lists: readonly Float64Array[]): Float64Array {
  const filled = lists.filter((list) => list.length > 0);
  if (filled.length === 0) return new Float64Array(0);
  // Neighbours first, so that of many lists no time is moved more often than their number can be halved.
  let left = filled;
  while (left.length > 1)
    left = Array.from({ length: Math.ceil(left.length / 2) }, (_, k) => {
      const [a, b] = [left[2 * k]!, left[2 * k + 1]];
      return b === undefined ? a : mergeTwo(a, b);
    });
  return left[0]!;
}

function mergeTwo(a: Float64Array, b: Float64Array): Float64Array {
  if (a.at(-1)! <= b[0]!) return joined(a, b);
  const merged = new Float64Array(a.length + b.length);
  let i = 0;
  let j = 0;
  for (let k = 0; k < merged.length; k++) {
    if (j >= b.length || (i < a.length && a[i]! <= b[j]!)) merged[k] = a[i++]!;
    else merged[k] = b[j++]!;
  }
  return merged;
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const both = new Float64Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** The same times ascending; the list given is put in order, and may be the one returned. */
export function sortNearly(times: Float64Array): Float64Array {
  const starts = [0];
  for (let i = 1; i < times.length; i++) if (times[i]! < times[i - 1]! - DROP) starts.push(i);
  if (starts.length > MOST_RUNS) return times.sort();
  const runs = starts.map((from, k) => times.subarray(from, starts[k + 1] ?? times.length));
  for (const run of runs) if (!insert(run)) run.sort();
  return runs.length === 1 ? times : mergeSorted(runs);
}

/** Insertion in place; false, with the list half in order, where it would take too long. */
function insert(run: Float64Array): boolean {
  let shifts = SHIFTS * run.length;
  for (let i = 1; i < run.length; i++) {
    const time = run[i]!;
    let j = i;
    while (j > 0 && run[j - 1]! > time) {
      run[j] = run[j - 1]!;
      j--;
      if (--shifts < 0) {
        run[j] = time;
        return false;
      }
    }
    run[j] = time;
  }
  return true;
}
