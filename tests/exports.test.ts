/**
 * What is exported, read back by tools of others: GPX by gpxparser 3 and our reader, CSV by csv-parse 7, GeoJSON by the
 * schema of geojson.org (package geojson-schema, draft 7) in ajv 8. Positions keep to 1e-7 of a degree.
 */
import { numberOf } from '../packages/core/src/layout/layout.ts';
import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { type Analysis, toCsv, toGpx } from '@halfcup/core';
import { type GpxDocument, readGpx } from '@halfcup/core/gpx';
import { toGeoJson } from '@halfcup/core/geojson';
import { Ajv } from 'ajv';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { layoutDocument } from '../packages/core/src/export/documents.ts';
import { reviewPlaced } from '../packages/core/src/review/placed.ts';
import type { Position } from './support/courses.ts';
import { analysisOf, must } from './support/exported.ts';
import { CASES, sourceOf } from './support/fixtures.ts';
import { peerOf } from './support/gpxparser.ts';
import { folderWith } from './support/halfcup.ts';

const folder = folderWith({});
const names = CASES;
const isSchema = new Ajv({ strict: false }).compile(
  createRequire(import.meta.url)('geojson-schema/FeatureCollection.json') as object,
);

/** A place that the layout document has, under what it is called there. */
interface Place {
  readonly station: number;
  readonly kind: string;
  readonly measure: number | null;
  readonly at: Position;
}

/** Every place of the layout, as `layout --json` has it. */
function placesOf(analysis: Analysis, own: boolean): Place[] {
  return layoutDocument(analysis, []).stations.flatMap(({ at, directions }, k) => {
    const number = numberOf(analysis.stations[k]!);
    const items = directions.flatMap(({ lead, items: all }) => {
      const taken = own && !lead ? all.filter(({ kind }) => kind === 'sign' || kind === 'trash') : all;
      return taken.flatMap(({ kind, from, to, at: ends, boxes = [] }) => [
        { station: number, kind, measure: from, at: ends[0] },
        ...(from === to ? [] : [{ station: number, kind, measure: to, at: ends[1] }]),
        ...boxes.map((box) => ({ station: number, kind: 'box', measure: box.measure, at: box.at })),
      ]);
    });
    const points = analysis.stations[k]!.station.points.map((point) => ({
      station: number,
      kind: point.kind as string,
      measure: null,
      at: point.at,
    }));
    const pin = { station: number, kind: 'station', measure: directions[0]?.measure ?? null, at };
    return [pin, ...items, ...points].flatMap((place) => (place.at === null ? [] : [{ ...place, at: place.at }]));
  });
}

/** Degrees between two positions, across the antimeridian too. */
const apart = ([lon, lat]: Position, [lon2, lat2]: Position): number =>
  Math.max(Math.abs(lon - lon2 - 360 * Math.round((lon - lon2) / 360)), Math.abs(lat - lat2));

const gpxOf = (analysis: Analysis): { text: string; document: GpxDocument } => {
  const text = must(toGpx(analysis, 'metric'));
  return { text, document: must(readGpx(text, 'out.gpx')) };
};

describe.each(names)('the exports of %s', (name) => {
  const analysis = analysisOf(sourceOf(name));
  const { text, document } = gpxOf(analysis);

  it('as GPX keep every vertex and elevation of each course', () => {
    expect(document.tracks.map((track) => track.name)).toEqual(analysis.courses.map(({ course }) => course.name));
    for (const [k, { course }] of analysis.courses.entries()) {
      const { segments } = document.tracks[k]!;
      expect(segments).toHaveLength(course.skips.length + 1);
      const [lon, lat, ele] = (['lon', 'lat', 'ele'] as const).map((key) =>
        segments.flatMap((segment) => [...segment[key]]),
      );
      expect(lon).toHaveLength(course.lon.length);
      for (let i = 0; i < course.lon.length; i++)
        expect(apart([lon![i]!, lat![i]!], [course.lon[i]!, course.lat[i]!])).toBeLessThan(1e-7);
      if (course.ele !== null)
        for (let i = 0; i < course.lon.length; i++) expect(Math.abs(ele![i]! - course.ele[i]!)).toBeLessThan(1e-3);
    }
  });

  it('as GPX have a waypoint for each station, sign, first table, trash drop and point, where it is', () => {
    const places = placesOf(analysis, true);
    const waypoints = document.waypoints.map(({ name: label, type, lon, lat }) => ({
      station: Number(/^\d+/u.exec(label!)![0]),
      kind: type!,
      at: [lon, lat] as Position,
    }));
    for (const waypoint of waypoints) {
      const nearest = Math.min(
        ...places
          .filter(({ station, kind }) => station === waypoint.station && kind === waypoint.kind)
          .map(({ at }) => apart(at, waypoint.at)),
      );
      expect(nearest, JSON.stringify(waypoint)).toBeLessThan(1e-7);
    }
    const counted = (list: readonly { readonly kind: string }[], kinds: readonly string[]): number =>
      list.filter(({ kind }) => kinds.includes(kind)).length;
    for (const kinds of [
      ['station'],
      ['sign'],
      ['trash'],
      ['drop'],
      ['access'],
      ['medical'],
      ['toilets'],
      ['radio'],
      ['other'],
    ])
      expect([kinds, counted(waypoints, kinds)]).toEqual([kinds, counted(places, kinds)]);
    const firstTable = (items: Analysis['stations'][number]['directions'][number]['items']): Position | null =>
      items.find(({ kind }) => ['gel', 'sportsDrink', 'water'].includes(kind))?.at[0] ?? null;
    const tabled = analysis.stations.filter(
      ({ directions: [lead] }) => lead !== undefined && firstTable(lead.items) !== null,
    );
    expect(counted(waypoints, ['gel', 'sportsDrink', 'water'])).toBe(tabled.length);
  });

  it('as GPX have short plain names that sort as they stand, in running order', () => {
    const labels = document.waypoints.map((waypoint) => waypoint.name!);
    expect(new Set(labels).size).toBe(labels.length);
    expect(labels.toSorted()).toEqual(labels);
    for (const label of labels) expect(label).toMatch(/^\d{2}[A-Z]+ [A-Z][A-Z -]{1,10}$/u);
    for (const station of analysis.stations) {
      if (station.directions.length !== 1) continue;
      const own = document.waypoints.filter(
        (waypoint) => Number(/^\d+/u.exec(waypoint.name!)![0]) === numberOf(station),
      );
      const measures = own.flatMap(({ description }) =>
        [...description!.matchAll(/ ([\d.]+) km of /gu)].map(([, measure]) => Number(measure)),
      );
      expect(measures.length).toBeGreaterThanOrEqual(3);
      expect(measures.toSorted((a, b) => a - b)).toEqual(measures);
    }
  });

  it('as GPX are read by another reader as by ours', () => {
    const path = join(folder, `${name}.gpx`);
    writeFileSync(path, text);
    const peer = peerOf(path);
    expect(peer.waypoints.map(({ lat, lon, name: label, cmt }) => ({ lat, lon, name: label, cmt }))).toEqual(
      document.waypoints.map(({ lat, lon, name: label, comment }) => ({ lat, lon, name: label, cmt: comment })),
    );
    expect(peer.tracks.map(({ points }) => points.map(({ lon, lat }) => [lon, lat]))).toEqual(
      document.tracks.map(({ segments }) =>
        segments.flatMap(({ lon, lat }) => Array.from(lon, (x, i) => [x, lat[i]!])),
      ),
    );
  });

  it('as CSV have each place of the layout in a row of its own, numbers as numbers', () => {
    const rows = parse(toCsv(analysis), { columns: true, record_delimiter: '\r\n' }) as unknown as Record<
      string,
      string
    >[];
    const placed = rows
      .filter((row) => row['longitude'] !== '')
      .map((row) => ({
        station: Number(row['station number']),
        kind: row['item']!,
        measure: row['course distance (m)'] === '' ? null : Number(row['course distance (m)']),
        at: [Number(row['longitude']), Number(row['latitude'])] as Position,
      }));
    const places = placesOf(analysis, false);
    expect(placed).toHaveLength(places.length);
    for (const place of places) {
      const same = placed.filter(
        ({ station, kind, measure, at }) =>
          station === place.station &&
          kind === place.kind &&
          apart(at, place.at) < 1e-7 &&
          (place.measure === null ? measure === null : Math.abs(measure! - place.measure) < 6e-4),
      );
      expect(same.length, JSON.stringify(place)).toBeGreaterThan(0);
    }
  });

  it('as CSV stand in course order, with the wheel distance of each item from the chalk mark', () => {
    const rows = parse(toCsv(analysis), { columns: true }) as unknown as Record<string, string>[];
    const items = layoutDocument(analysis, []).stations.flatMap(({ id, directions }) =>
      directions.flatMap(({ items: own, course }) => own.map((item) => ({ id, course, item }))),
    );
    expect(
      rows.filter((row) => row['end'] !== 'to' && items.some(({ item }) => item.kind === row['item'])),
    ).toHaveLength(items.length);
    for (const { id, course, item } of items) {
      const label = analysis.courses.find((indexed) => indexed.course.id === course)!.course.name;
      const row = rows.find(
        (one) =>
          one['station'] === id &&
          one['course'] === label &&
          one['item'] === item.kind &&
          one['end'] !== 'to' &&
          Math.abs(Number(one['course distance (m)']) - item.from) < 6e-4,
      )!;
      expect([row['side'], row['wording']]).toEqual([item.side, item.wording ?? '']);
      if (item.wheel === null) expect(row['wheel from chalk mark (m)']).toBe('');
      else expect(Math.abs(Number(row['wheel from chalk mark (m)']) - item.wheel[0])).toBeLessThan(6e-4);
    }
    const courses = [...new Set(rows.map((row) => row['course']))];
    for (const course of courses) {
      const pins = rows
        .filter((row) => row['course'] === course && row['item'] === 'station')
        .map((row) => Number(row['course distance (m)']));
      expect(pins.toSorted((a, b) => a - b)).toEqual(pins);
    }
  });

  it('as GeoJSON keep every place, and the schema accepts them', () => {
    const collection = JSON.parse(JSON.stringify(toGeoJson(analysis))) as ReturnType<typeof toGeoJson>;
    expect(isSchema(collection), JSON.stringify(isSchema.errors?.slice(0, 3))).toBe(true);
    const ends = collection.features.flatMap(({ geometry, properties }) => {
      if (geometry?.type !== 'Point' && geometry?.type !== 'LineString' && geometry?.type !== 'MultiLineString')
        return [];
      const line =
        geometry.type === 'Point'
          ? [geometry.coordinates]
          : geometry.type === 'LineString'
            ? geometry.coordinates
            : geometry.coordinates.flat();
      const own = analysis.stations.find(({ id }) => id === properties?.['station']);
      const station = own === undefined ? 0 : numberOf(own);
      return [line[0]!, line.at(-1)!].map((at) => ({
        station,
        kind: properties?.['kind'] as string,
        at: at as unknown as Position,
      }));
    });
    for (const place of placesOf(analysis, true)) {
      const nearest = Math.min(
        ...ends
          .filter(({ station, kind }) => station === place.station && kind === place.kind)
          .map(({ at }) => apart(at, place.at)),
      );
      expect(nearest, JSON.stringify(place)).toBeLessThan(1e-7);
    }
  });
});

it('signs and trash drops recorded just where the exported waypoints are hold', () => {
  const analysis = analysisOf(sourceOf('demo'));
  const { text } = gpxOf(analysis);
  const signs = text
    .split('\n')
    .filter((line) => !line.startsWith('<wpt') || /<name>\d+[A-Z] (?:SIGN|TRASH|DRINK|GEL|WATER)/u.test(line))
    .join('\n')
    .replaceAll('</wpt>', '<hdop>0.02</hdop></wpt>');
  const { verdicts } = reviewPlaced(analysis, must(readGpx(signs, 'placed.gpx')));
  const held = verdicts.filter(({ item }) => item === 'sign' || item === 'trash');
  expect(held.length).toBeGreaterThan(10);
  const planned = new Set(
    analysis.findings.filter(({ code }) => code === 'sign-distance').map(({ where }) => where.station),
  );
  expect(
    held.filter(({ verdict, station, item }) => verdict !== 'holds' && !(item === 'sign' && planned.has(station))),
  ).toEqual([]);
});

it('the schema refuses what is no GeoJSON', () => {
  const broken = {
    type: 'FeatureCollection',
    features: [{ type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: ['1', 2] } }],
  };
  expect(isSchema(broken)).toBe(false);
});
