/** What `halfcup --limits` prints: how much each reader takes. */
import { limitTable } from '../src/text/limitTable.ts';
import { columns, joined, narrowed, paragraph, section } from './help.ts';
import type { Screen } from './screen.ts';

export function limitsHelp(wide: Screen): string {
  const screen = narrowed(wide);
  return joined([
    section(
      'At most:',
      columns(
        limitTable().map(({ title, most }) => [title, most.join(', ')]),
        screen.width,
      ),
      screen,
    ),
    paragraph(
      'What is past a limit is refused, with what was found and what to do. Pipes, devices and sockets are refused at once; - is standard input.',
      screen.width,
    ),
  ]);
}
