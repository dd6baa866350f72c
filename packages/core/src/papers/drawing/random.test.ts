/** Drawings of stations by chance: no label on another, none cut, all that stands there named, in order, on its side. */
import { describe, expect, it } from 'vitest';
import { type RandomStation, drawingOf, randomStations } from '../../testing/randomStations.ts';
import { type Box, POINT, overlap, textWidth } from '../textBox.ts';

interface Text extends Box {
  readonly says: string;
  readonly data: string;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
};

function textsOf(svg: string): Text[] {
  const found = [
    ...svg.matchAll(
      /<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)"( font-weight="bold")?(?: text-anchor="(\w+)")?([^>]*)>([^<]*)<\/text>/gu,
    ),
  ];
  expect(found).toHaveLength(svg.split('<text').length - 1);
  return found.map(([, x, y, size, bold, anchor, data, escaped]) => {
    const says = escaped!.replaceAll(/&[^;]+;/gu, (entity) => ENTITIES[entity]!);
    const width = textWidth(says, Number(size) / POINT, bold !== undefined);
    const left = Number(x) - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
    // Of the letters themselves: capitals are 0.73 em high, descenders 0.21 em deep.
    return { says, data: data!, x: left, y: Number(y) - Number(size) * 0.73, width, height: Number(size) * 0.94 };
  });
}

interface Plumb {
  readonly x: number;
  readonly y0: number;
  readonly y1: number;
}

/** Plumb pieces of the lines from things to their words: where, and from which height to which; `ends`: the last of each line alone. */
const leadersOf = (svg: string): { readonly all: readonly Plumb[]; readonly ends: readonly Plumb[] } => {
  const lines = [...svg.matchAll(/<path d="([^"]*)" stroke="#000" stroke-width="0\.25" fill="none"\/>/gu)].map(
    ([, d]) =>
      [...d!.matchAll(/[ML]([-\d.]+) ([-\d.]+)V([-\d.]+)/gu)].map(([, x, y0, y1]): Plumb => ({
        x: Number(x),
        y0: Number(y0),
        y1: Number(y1),
      })),
  );
  return { all: lines.flat(), ends: lines.flatMap((pieces) => pieces.at(-1) ?? []) };
};

function faultsOf(station: RandomStation, { svg, height }: Drawing): string[] {
  const { input, direction } = station;
  const texts = textsOf(svg.html);
  const faults: string[] = [];
  texts.forEach((one, k) => {
    if (one.x < -0.02 || one.x + one.width > input.width + 0.02 || one.y < -0.1 || one.y + one.height > height + 0.1)
      faults.push(`“${one.says}” is cut`);
    for (const other of texts.slice(k + 1)) if (overlap(one, other)) faults.push(`“${one.says}” on “${other.says}”`);
  });
  const leaders = leadersOf(svg.html);
  for (const { x, y0, y1 } of leaders.all) {
    const line = { x: x - 0.1, y: Math.min(y0, y1), width: 0.2, height: Math.abs(y1 - y0) };
    for (const one of texts) if (overlap(line, one)) faults.push(`a line runs through “${one.says}”`);
  }
  // Things that share a number share the end of their lines.
  const places = [...new Set(leaders.ends.map(({ x }) => x))].toSorted((a, b) => a - b);
  places.slice(1).forEach((x, k) => {
    if (x - places[k]! < 2 - 0.02) faults.push(`two lines ${(x - places[k]!).toFixed(2)} mm apart`);
  });
  const named = (what: string): string[] =>
    texts.flatMap(({ data }) => new RegExp(`data-${what}="(\\w+)"`, 'u').exec(data)?.[1] ?? []);
  if (
    named('item').toSorted().join() !==
    direction.items
      .map(({ kind }) => kind)
      .toSorted()
      .join()
  )
    faults.push(`items ${named('item').join()}`);
  if (
    named('point').toSorted().join() !==
    input.points
      .map(({ kind }) => kind)
      .toSorted()
      .join()
  )
    faults.push('points');
  if (texts.filter(({ data }) => data.includes('data-street=')).length < input.mouths!.length) faults.push('streets');
  if (named('gate').length !== input.gates!.length) faults.push('gates');
  if (named('chalk').length !== 1) faults.push('chalk mark');
  return faults;
}

type Drawing = ReturnType<typeof drawingOf>;

describe('drawings of random stations', () => {
  const stations = randomStations(1000, 20270912);
  const drawings = new Map(stations.map((one) => [one, drawingOf(one)]));

  it('come with all sorts of stations', () => {
    const share = (holds: (one: RandomStation) => boolean): number => stations.filter(holds).length / stations.length;
    expect(share(({ direction }) => direction.items.some(({ wheel }) => wheel === null))).toBeGreaterThan(0.02);
    expect(share(({ direction }) => direction.side === 'left')).toBeGreaterThan(0.3);
    expect(share(({ input }) => input.gates!.length > 0)).toBeGreaterThan(0.1);
    expect(share(({ input }) => input.mouths!.some(({ kerb }) => kerb === 'far'))).toBeGreaterThan(0.2);
    expect(share(({ input }) => input.points.length > 4)).toBeGreaterThan(0.2);
    expect(share(({ input }) => input.people !== undefined)).toBeGreaterThan(0.3);
  });

  it('have no label on another, none cut, no line through one, lines 2 mm apart, and name all that stands there', () => {
    const faults = stations.flatMap((one, k) =>
      faultsOf(one, drawings.get(one)!).map((fault) => `${k} ${one.input.size}: ${fault}`),
    );
    expect(faults).toEqual([]);
  });

  it('give every stretch its length, where they are asked for', () => {
    const asked = stations.filter(({ input }) => input.dimensions === true);
    for (const one of asked) {
      const legs = drawings.get(one)!.svg.html.split('data-leg="').length - 1;
      expect(legs).toBeGreaterThan(2);
    }
  });

  it('number from left to right, in the order of the legend, and keep the order in which runners meet things', () => {
    let numbered = 0;
    for (const one of stations) {
      const texts = textsOf(drawings.get(one)!.svg.html);
      const keys = texts.filter(({ data }) => data.includes('data-key')).map(({ says }) => says);
      if (keys[0] !== '1') continue;
      numbered += 1;
      expect(keys).toEqual(keys.map((_, k) => String(k + 1)));
      const marks = texts.filter(({ says, data }) => /^\d+(–\d+)?$/u.test(says) && data === '');
      const places = marks.map(({ x, says }) => [x, Number.parseInt(says, 10)] as const);
      expect(places.map(([, number]) => number)).toEqual(
        places.toSorted((a, b) => a[0] - b[0]).map(([, number]) => number),
      );
      const order = [...drawings.get(one)!.svg.html.matchAll(/data-item="(\w+)"/gu)].map(([, kind]) => kind!);
      const met = one.direction.items.filter(({ kind }) => kind !== 'handOut').map(({ kind }) => kind as string);
      expect(order.filter((kind) => kind !== 'handOut')).toEqual(met);
    }
    expect(numbered).toBeGreaterThan(300);
  });

  it('have the tables on their side: the road below them where they stand on the left', () => {
    for (const one of stations.slice(0, 200)) {
      const { svg, height } = drawings.get(one)!;
      const road = Number(/<rect x="0" y="([\d.]+)"/u.exec(svg.html)![1]);
      const table = Number(/<rect x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="3\.2"/u.exec(svg.html)![1]);
      expect(table < road, `${one.direction.side} ${height}`).toBe(one.direction.side === 'left');
    }
  });
});
