/**
 * Every number and clock time of a plan as the published JSON Schema has it, and plans with some of them changed: a key that is
 * new to the schema is among them by itself. Not part of the package.
 */
import { planJsonSchema } from '../export/schemas/plan.ts';
import { generator } from './courses.ts';

/** A whole number from 0, below another. */
export type Random = (below: number) => number;

/** The same numbers for the same seed. */
export function randomBelow(seed: number): Random {
  const next = generator(seed);
  return (below) => Math.floor(next() * below);
}

export const pick = <T>(random: Random, list: readonly T[]): T => list[random(list.length)]!;

export interface Node {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Node | boolean;
  readonly items?: Node | boolean;
  readonly prefixItems?: readonly Node[];
  readonly minItems?: number;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

/** A step to a value: a key, a place of a tuple, any entry of a list or of a record, a form of several. */
export type Step =
  | { readonly key: string; readonly node: Node }
  | { readonly place: number; readonly node: Node }
  | { readonly each: 'list' | 'record'; readonly node: Node }
  | { readonly form: Node };

/** A number with its range, or a clock time, with the way to it. */
export interface Leaf {
  readonly name: string;
  readonly steps: readonly Step[];
  readonly node: Node;
  readonly kind: 'number' | 'whole' | 'clock';
  /** The SI unit of a text that may stand for it. */
  readonly unit?: string;
}

const CLOCK = /\\d\{1,3\}:\[0-5\]\\d\(:/u;
const UNITS: readonly (readonly [sign: string, unit: string])[] = [
  ['km|', 'm'],
  ['s|min|h', 's'],
  ['l|ml', 'l'],
  ['kg|lb', 'kg'],
];

/** A number that may be written as text too. */
function quantityOf(node: Node): { readonly number: Node; readonly unit: string } | null {
  const [number, text] = node.anyOf ?? [];
  const unit = UNITS.find(([sign]) => text?.pattern?.includes(sign))?.[1];
  return number?.type === 'number' && unit !== undefined ? { number, unit } : null;
}

function leavesOf(node: Node, name: string, steps: readonly Step[]): Leaf[] {
  const quantity = quantityOf(node);
  if (quantity !== null) return [{ name, steps, node: quantity.number, kind: 'number', unit: quantity.unit }];
  if (node.const !== undefined) return [];
  if (node.type === 'number') return [{ name, steps, node, kind: 'number' }];
  if (node.type === 'integer') return [{ name, steps, node, kind: 'whole' }];
  if (node.type === 'string') return CLOCK.test(node.pattern ?? '') ? [{ name, steps, node, kind: 'clock' }] : [];
  return [
    ...(node.anyOf ?? []).flatMap((form) => leavesOf(form, name, [...steps, { form }])),
    ...Object.entries(node.properties ?? {}).flatMap(([key, inner]) =>
      leavesOf(inner, `${name}${name === '' ? '' : '.'}${key}`, [...steps, { key, node: inner }]),
    ),
    ...(node.prefixItems ?? []).flatMap((inner, place) =>
      leavesOf(inner, `${name}[${place}]`, [...steps, { place, node: inner }]),
    ),
    ...(typeof node.items === 'object'
      ? leavesOf(node.items, `${name}[]`, [...steps, { each: 'list', node: node.items }])
      : []),
    ...(typeof node.additionalProperties === 'object'
      ? leavesOf(node.additionalProperties, `${name}.*`, [
          ...steps,
          { each: 'record', node: node.additionalProperties },
        ])
      : []),
  ];
}

/** All numbers and clock times that a plan can hold. */
export const planLeaves = (): readonly Leaf[] => leavesOf(planJsonSchema(), '', []);

/** A value that an object's schema asks for, where a plan has none yet. */
function filled(node: Node, random: Random): unknown {
  if (node.const !== undefined) return node.const;
  if (node.enum !== undefined) return pick(random, node.enum);
  if (node.anyOf !== undefined && node.properties === undefined)
    return filled(quantityOf(node)?.number ?? node.anyOf[0]!, random);
  if (node.type === 'number' || node.type === 'integer') return numberIn(node, node.type === 'integer', random);
  if (node.type === 'string') return CLOCK.test(node.pattern ?? '') ? '08:00' : 'x';
  if (node.type === 'boolean') return random(2) === 0;
  if (node.prefixItems !== undefined) return node.prefixItems.slice(0, node.minItems).map((one) => filled(one, random));
  if (node.type === 'array')
    return Array.from({ length: node.minItems ?? 1 }, () => filled(node.items as Node, random));
  const required = [...(node.required ?? []), ...((node.anyOf ?? node.oneOf)?.[0]?.required ?? [])];
  return Object.fromEntries(required.map((key) => [key, filled(node.properties![key]!, random)]));
}

const EXPONENTS = 1e6;

/** A number in a range: an end, near one, or between them evenly or by orders of magnitude. */
export function numberIn({ minimum = -1e12, maximum = 1e12 }: Node, whole: boolean, random: Random): number {
  const width = maximum - minimum;
  const share = random(EXPONENTS) / EXPONENTS;
  const kind = random(10);
  const small = minimum + width * 10 ** (-9 * share);
  const value =
    kind < 2
      ? minimum
      : kind < 4
        ? maximum
        : kind < 5
          ? maximum - width * 1e-6
          : kind < 8
            ? small
            : minimum + width * share;
  return Math.min(Math.max(whole ? Math.round(value) : value, minimum), maximum);
}

const two = (value: number): string => String(value).padStart(2, '0');

function valueFor({ node, kind, unit }: Leaf, random: Random): unknown {
  if (kind === 'clock') {
    const hours = pick(random, [random(24), random(24), random(48), 0, 999, random(1000)]);
    const minutes = pick(random, [0, random(60)]);
    return `${two(hours)}:${two(minutes)}${random(2) === 0 ? '' : `:${two(random(60))}`}`;
  }
  const value = numberIn(node, kind === 'whole', random);
  return unit !== undefined && random(3) === 0 && !/e/u.test(String(value)) ? `${value} ${unit}` : value;
}

type Holder = Record<string | number, unknown>;
const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;

const fits = (value: unknown, form: Node): boolean =>
  isHolder(value) &&
  (form.type === 'array' ? Array.isArray(value) : (form.required ?? []).every((key) => Object.hasOwn(value, key)));

/** Where a step leads from a value: a key of it, which may not be there yet. */
function keyAt(
  step: Exclude<Step, { form: Node }>,
  holder: Holder,
  next: Step | undefined,
  random: Random,
): string | number {
  if ('key' in step) return step.key;
  if ('place' in step) return step.place;
  const known = Array.isArray(holder) ? holder.map((_, at) => at) : Object.keys(holder);
  if (known.length === 0) return step.each === 'list' ? 0 : 's1';
  // An entry that has the key already stands a better chance to be good with another value.
  const having =
    next !== undefined && 'key' in next ? known.filter((one) => Object.hasOwn(holder[one] as object, next.key)) : [];
  return pick<string | number>(random, having.length > 0 && random(4) > 0 ? having : known);
}

/** Puts a value where a leaf says, and whatever has to stand around it. */
export function put(plan: unknown, leaf: Leaf, random: Random, value: unknown = valueFor(leaf, random)): void {
  let holder = plan as Holder;
  const steps = leaf.steps;
  for (let k = 0; k < steps.length; k++) {
    const step = steps[k]!;
    if ('form' in step) continue;
    const next = steps[k + 1];
    const key = keyAt(step, holder, next, random);
    if (k === steps.length - 1 || (k === steps.length - 2 && 'form' in next!)) {
      holder[key] = value;
      return;
    }
    const form = next !== undefined && 'form' in next ? next.form : step.node;
    if (!fits(holder[key], form)) holder[key] = filled(form, random);
    holder = holder[key] as Holder;
  }
}
