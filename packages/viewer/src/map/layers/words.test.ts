import type { StationLayout } from '@halfcup/core';
import { describe, expect, it } from 'vitest';
import { openDemo, openedFrom, straightPlan } from '../../testing.ts';
import { coursesOf } from '../../state/view/derive.ts';
import { openFiles } from '../../state/open/open.ts';
import { stationItems } from './items.ts';
import { BANDS, WORD_SIZE, placeWords } from './words.ts';

const demo = openDemo().analysis;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly says: string;
}

/** Words as the map draws them at a zoom, pixels from the pin; a letter 0.6 em wide (an assumption: system fonts differ). */
function wordsAt(station: StationLayout, features: ReturnType<typeof stationItems>, band: number, zoom: number): Box[] {
  const [lon, lat] = station.at;
  // Web Mercator of 512 pixels to the world at zoom 0 (MapLibre), as in the code.
  const perDegree = (512 * 2 ** zoom) / 360;
  return features.flatMap(({ geometry, properties }) => {
    if (geometry.type !== 'Point' || properties.draw !== 'word' || properties.band !== band) return [];
    const [x, y] = geometry.coordinates as [number, number];
    return [
      {
        x: (x - lon) * perDegree + properties.offset![0] * WORD_SIZE,
        y: ((lat - y) * perDegree) / Math.cos((lat * Math.PI) / 180) + properties.offset![1] * WORD_SIZE,
        width: properties.says!.length * 0.6 * WORD_SIZE,
        says: properties.says!,
      },
    ];
  });
}

function faultsOf(words: readonly Box[]): string[] {
  return words.flatMap((a, k) =>
    words
      .slice(k + 1)
      .filter((b) => Math.abs(a.x - b.x) * 2 < a.width + b.width && Math.abs(a.y - b.y) < 13)
      .map((b) => `${a.says} on ${b.says}`),
  );
}

const counted = (words: readonly Box[]): number =>
  words.reduce((sum, { says }) => sum + 1 + Number(/ \+(\d+)$/u.exec(says)?.[1] ?? 0), 0);

describe('words near a station', () => {
  it.each(demo.stations.map((station) => [station.name, station] as const))(
    'stand apart at every zoom at %s, every thing named or counted',
    (_, station) => {
      const features = stationItems(coursesOf(demo), station);
      const named = features.filter(
        ({ properties }) => properties.draw === 'sign' || properties.draw === 'point',
      ).length;
      const tables = new Set(
        features.filter(({ properties }) => properties.draw === 'table').map(({ properties }) => properties.kind),
      ).size;
      const boxes = station.directions.filter(({ items }) => items.some(({ kind }) => kind === 'trash')).length;
      BANDS.forEach((zoom, band) => {
        for (const at of [zoom, zoom + 0.3, zoom + 0.9]) {
          const words = wordsAt(station, features, band, at);
          expect(faultsOf(words), `${at}`).toEqual([]);
          expect(counted(words), `${at}`).toBe(named + tables + boxes);
        }
      });
    },
  );

  const farStation = (): StationLayout => {
    const on = { course: 'c', measure: '2 km', side: 'right' };
    return openedFrom(openFiles([straightPlan({ stations: [{ id: 's', name: 'Far', on }] })], null)).analysis
      .stations[0]!;
  };

  it('stand on the side of their things, off the course’s line, at every zoom at which there is room', () => {
    const station = farStation();
    for (const bearing of [0, 60, 90, 135, 180, 230, 270, 300]) {
      const spots = Array.from({ length: 3 }, (_, k) => ({
        at: [station.at[0] + k * 2e-4, station.at[1] + k * 2e-4] as const,
        word: 'Sports drink',
        bearing,
        gap: 4,
      }));
      const words = placeWords(station, spots);
      expect(words).toHaveLength(3 * BANDS.length);
      const angle = (bearing * Math.PI) / 180;
      for (const { offset, band } of words) {
        // Letters take more than half an em; half of the word's box towards the line, and the line's place by the scale of Web Mercator.
        const [east, south] = [offset[0] * WORD_SIZE, offset[1] * WORD_SIZE];
        const half = Math.abs(Math.sin(angle)) * 12 * 3 + Math.abs(Math.cos(angle)) * 6;
        const towards = -east * Math.sin(angle) + south * Math.cos(angle) + half;
        const metre = 2 ** BANDS[band]! / (78_271.517 * Math.cos((station.at[1] * Math.PI) / 180));
        expect(towards, `${bearing}° in band ${band}`).toBeLessThan(4 * metre);
      }
    }
  });

  it('counts the words that have no room on the nearest one that has', () => {
    const station = farStation();
    const spots = Array.from({ length: 60 }, (_, k) => ({ at: station.at, word: `Point number ${k}`, bearing: 90 }));
    const words = placeWords(station, spots).filter(({ band }) => band === 0);
    expect(words.length).toBeLessThan(60);
    const more = words.reduce((sum, { says }) => sum + Number(/ \+(\d+)$/u.exec(says)?.[1] ?? 0), 0);
    expect(more).toBe(60 - words.length);
    expect(more).toBeGreaterThan(0);
  });
});
