/**
 * The least sum of costs over choices, one for each variable, exact: variable elimination (dynamic
 * programming over the graph of which variables share a cost). On a chain of n variables with k choices
 * each it takes n·k² steps; where a variable is left with two neighbours, k³, and so on.
 * Source: R. Dechter, Bucket elimination, Artificial Intelligence 113 (1999), from memory.
 */

/** Costs of the choices of up to two variables (`vars` ascending); the last variable's choice runs fastest. Infinity forbids. */
export interface Factor {
  readonly vars: readonly number[];
  readonly values: Float64Array;
}

/** Order in which variables are taken out, and the steps that this takes. */
export interface Order {
  readonly vars: readonly number[];
  readonly steps: number;
  /** The variables of the largest table. */
  readonly widest: readonly number[];
}

const product = (vars: readonly number[], sizes: readonly number[]): number =>
  vars.reduce((all, v) => all * sizes[v]!, 1);

const union = (scopes: readonly (readonly number[])[]): number[] => [...new Set(scopes.flat())].sort((a, b) => a - b);

/**
 * Takes out next the variable whose table is smallest, the first of equals. Each time only the neighbours of the one that
 * is taken out are looked at again.
 */
export function eliminationOrder(sizes: readonly number[], scopes: readonly (readonly number[])[]): Order {
  const beside = sizes.map(() => new Set<number>());
  for (const scope of scopes) for (const v of scope) for (const u of scope) if (u !== v) beside[v]!.add(u);
  const table = (v: number): number => product([v, ...beside[v]!], sizes);
  const tables = sizes.map((_, v) => table(v));
  const left = new Set(sizes.keys());
  const vars: number[] = [];
  let steps = 0;
  let widest: readonly number[] = [];
  let most = 0;
  while (left.size > 0) {
    let next = -1;
    for (const v of left) if (next < 0 || tables[v]! < tables[next]!) next = v;
    const around = [...beside[next]!];
    steps += tables[next]!;
    if (tables[next]! > most) {
      most = tables[next]!;
      widest = [next, ...around];
    }
    left.delete(next);
    vars.push(next);
    for (const v of around) {
      beside[v]!.delete(next);
      for (const u of around) if (u !== v) beside[v]!.add(u);
    }
    for (const v of around) tables[v] = table(v);
  }
  return { vars, steps, widest };
}

interface Bucket {
  readonly v: number;
  readonly scope: readonly number[];
  readonly best: Uint32Array;
}

/** The least sum with the choices that make it, of equal ones the first; `null` where every combination is forbidden. */
export function minimise(
  sizes: readonly number[],
  factors: readonly Factor[],
  { vars }: Pick<Order, 'vars'>,
): { readonly value: number; readonly choices: readonly number[] } | null {
  let open = [...factors];
  const buckets: Bucket[] = [];
  for (const v of vars) {
    const own = open.filter((factor) => factor.vars.includes(v));
    const { bucket, message } = takeOut(v, own, sizes);
    open = [...open.filter((factor) => !factor.vars.includes(v)), message];
    buckets.push(bucket);
  }
  const value = open.reduce((sum, factor) => sum + factor.values[0]!, 0);
  if (value === Infinity) return null;
  const choices = sizes.map(() => 0);
  for (const { v, scope, best } of buckets.reverse())
    choices[v] = best[scope.reduce((index, u) => index * sizes[u]! + choices[u]!, 0)]!;
  return { value, choices };
}

/** How far apart in a factor's values neighbouring choices of a variable lie; 0 where it has no such variable. */
function strideOf(factor: Factor, v: number, sizes: readonly number[]): number {
  const at = factor.vars.indexOf(v);
  return at < 0 ? 0 : product(factor.vars.slice(at + 1), sizes);
}

function takeOut(v: number, own: readonly Factor[], sizes: readonly number[]): { bucket: Bucket; message: Factor } {
  const scope = union(own.map((factor) => factor.vars)).filter((u) => u !== v);
  const count = product(scope, sizes);
  const values = new Float64Array(count);
  const best = new Uint32Array(count);
  const sum = new Float64Array(sizes[v]!);
  const digits = scope.map(() => 0);
  const steps = own.map((factor) => ({
    values: factor.values,
    stride: strideOf(factor, v, sizes),
    strides: scope.map((u) => strideOf(factor, u, sizes)),
  }));
  for (let index = 0; index < count; index++) {
    sum.fill(0);
    for (const { values: costs, stride, strides } of steps) {
      let at = 0;
      for (let k = 0; k < digits.length; k++) at += digits[k]! * strides[k]!;
      for (let x = 0; x < sum.length; x++, at += stride) sum[x]! += costs[at]!;
    }
    let least = 0;
    for (let x = 1; x < sum.length; x++) if (sum[x]! < sum[least]!) least = x;
    values[index] = sum[least]!;
    best[index] = least;
    countUp(digits, scope, sizes);
  }
  return { bucket: { v, scope, best }, message: { vars: scope, values } };
}

/** The next combination, the last variable's choice running fastest. */
function countUp(digits: number[], scope: readonly number[], sizes: readonly number[]): void {
  for (let k = digits.length - 1; k >= 0; k--) {
    digits[k]!++;
    if (digits[k]! < sizes[scope[k]!]!) return;
    digits[k] = 0;
  }
}
