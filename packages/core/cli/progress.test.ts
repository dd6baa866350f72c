import { expect, it } from 'vitest';
import { type Terminal, progressOf } from './progress.ts';

function fake(keys: Omit<Terminal, 'write'>): { terminal: Terminal; written: string[] } {
  const written: string[] = [];
  return { terminal: { ...keys, write: (text) => written.push(text) }, written };
}

it('says nothing where there is no terminal', () => {
  const { terminal, written } = fake({});
  const progress = progressOf('Reading c.gpx', terminal);
  for (const share of [0, 0.5, 1]) progress.show(share);
  progress.clear();
  expect(written).toEqual([]);
});

it('writes a line over the one before when the percent changes, and wipes it at the end', () => {
  const { terminal, written } = fake({ isTTY: true, columns: 0 });
  const progress = progressOf('Reading c.gpx', terminal);
  for (const share of [0, 0.001, 0.5, 0.509, 1.2]) progress.show(share);
  progress.clear();
  progress.clear();
  expect(written).toEqual([
    '\r\u001B[KReading c.gpx 0 %',
    '\r\u001B[KReading c.gpx 50 %',
    '\r\u001B[KReading c.gpx 100 %',
    '\r\u001B[K',
  ]);
});

it('never wipes a line that it has not written', () => {
  const { terminal, written } = fake({ isTTY: true });
  progressOf('Reading c.gpx', terminal).clear();
  expect(written).toEqual([]);
});

it('fits the terminal, and no name moves the cursor', () => {
  const { terminal, written } = fake({ isTTY: true, columns: 30 });
  progressOf(`Reading ${'x'.repeat(200)}\u001B[2J\n\u202E.gpx`, terminal).show(1);
  const line = written[0]!.replace('\r\u001B[K', '');
  expect(line.length).toBeLessThan(30);
  expect(line).toMatch(/^Reading x+… 100 %$/u);
  const short = fake({ isTTY: true });
  progressOf('a\u001B[2J\nb', short.terminal).show(0);
  expect(short.written).toEqual(['\r\u001B[Ka [2J b 0 %']);
});
