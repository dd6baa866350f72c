/** How all commands print: JSON, units, tables without lines. */
import Table from 'cli-table3';
import type { Finding } from '../src/finding.ts';
import type { UnitSystem } from '../src/units.ts';
import type { Call } from './call.ts';

/** Two spaces, short lists of numbers on one line each. */
export function json(value: unknown): string {
  const spread = JSON.stringify(value, null, 2);
  // A line break cannot stand inside a JSON text, so this meets lists of numbers (and null) only.
  const short = spread.replaceAll(
    /\[\n\s+((?:-?[\d.e+-]+|null)(?:,\n\s+(?:-?[\d.e+-]+|null))*)\n\s+\]/gu,
    (_, inner: string) => `[${inner.replaceAll(/,\s+/gu, ', ')}]`,
  );
  return `${short}\n`;
}

/** Units of the call, else the plan's, else metric. */
export const unitsOf = (call: Call, usual: UnitSystem = 'metric'): UnitSystem =>
  (call.values.get('units') as UnitSystem | undefined) ?? usual;

const BARE = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '  ',
};

/** Rows in columns, two spaces apart; columns whose heading begins with a space are set to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const made = new Table({
    head: head.map((one) => one.trim()),
    chars: BARE,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
    colAligns: head.map((one) => (one.startsWith(' ') ? 'right' : 'left')),
  });
  made.push(...rows.map((row) => row.map(oneLine)));
  return made
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}

/** Names from files may hold line breaks, control characters and turns of the reading order, which would break a table or a terminal. */
export const oneLine = (text: string): string => text.replaceAll(/[\s\p{Cc}\u202A-\u202E\u2066-\u2069]+/gu, ' ').trim();

/** Findings, the gravest first, a line each with where it is. */
export function findingsText(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Nothing found to mend.';
  const order = ['error', 'warning', 'note'] as const;
  const sorted = order.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
  const counts = order.map(
    (severity) => [severity, findings.filter((finding) => finding.severity === severity).length] as const,
  );
  const head = counts
    .filter(([, count]) => count > 0)
    .map(([severity, count]) => `${count} ${severity}${count === 1 ? '' : 's'}`)
    .join(', ');
  return [
    head,
    ...sorted.map((finding) => `  ${finding.severity.padEnd(7)}  ${oneLine(finding.message)}${placed(finding)}`),
  ].join('\n');
}

const placed = ({ where: { file, line, column } }: Finding): string =>
  file === undefined || line === undefined ? '' : ` (${file}:${line}:${column ?? 1})`;
