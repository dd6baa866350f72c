/**
 * Names that break what is careless, through every export: each comes back whole (but for signs that the format cannot
 * hold, which become U+FFFD) and nothing of it is markup, a formula or a line of its own. Read by our reader of
 * GPX, gpxparser 3, csv-parse 7 and ical.js 2; the cases of csv-spectrum 2 (BSD) go through the CSV writer.
 */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Analysis, toCalendar, toCsv, toGpx } from '@halfcup/core';
import { csvText, textOfCell } from '@halfcup/core/schemas';
import { toGeoJson } from '@halfcup/core/geojson';
import { readGpx } from '@halfcup/core/gpx';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { readDelimited } from '../packages/core/src/delimited.ts';
import { HOSTILE, analysisOf, must } from './support/exported.ts';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { peerOf } from './support/gpxparser.ts';
import { folderWith } from './support/halfcup.ts';

const folder = folderWith({});

/** Every text of a plan that reaches an export, with a hostile one in its place. */
function hostileAnalysis(text: string): Analysis {
  const waves = [{ time: '07:00', entrants: 100 }];
  const plan = planText(
    [
      {
        id: `s1${text}`,
        name: text,
        on: { course: 'c', measure: 2500, side: 'right' },
        serves: ['gel', 'water'],
        points: [{ kind: 'access', at: OCEAN, name: text, street: text, note: text }],
      },
    ],
    {
      name: text,
      date: '2027-09-12',
      timeZone: 'Etc/GMT+1',
      courses: [{ id: 'c', name: text, gpx: 'c.gpx' }],
      races: [{ id: 'm', name: text, course: 'c', waves, finish: { median: '0:30:00', spread: 0.1 } }],
    },
  );
  return analysisOf({ plan, gpx: { 'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]) } });
}

const halves = /\p{Cs}/gu;
/** XML 1.0, production 2. */
const inXml = (text: string): string =>
  text
    .replaceAll(halves, '\uFFFD')
    .replaceAll(/[^\t\n\r\P{Cc}\u007F-\u009F]|[\uFFFE\uFFFF]/gu, (sign) =>
      sign >= '\u007F' && sign <= '\u009F' ? sign : '\uFFFD',
    )
    .trim();
const inText = (text: string): string => text.replaceAll(halves, '\uFFFD').replaceAll(/[^\t\n\r\P{Cc}]/gu, '\uFFFD');

describe.each(HOSTILE.map((text) => ({ text, shown: JSON.stringify(text).slice(0, 40) })))(
  'a plan all of whose names are $shown',
  ({ text }) => {
    const analysis = hostileAnalysis(text);

    it('is whole as GPX', () => {
      const gpx = must(toGpx(analysis));
      const { name, tracks, waypoints } = must(readGpx(gpx, 'c.gpx'));
      expect([name, tracks[0]!.name]).toEqual([inXml(text), inXml(text)]);
      expect(waypoints.map((waypoint) => waypoint.name)).toEqual([
        '01A SIGN',
        '01B GEL',
        '01C STATION',
        '01D TRASH FROM',
        '01E TRASH TO',
        '01F ACCESS',
      ]);
      for (const { comment } of waypoints) expect(comment).toBe(`Station 1: ${inXml(` ${text}`)}`);
      expect(waypoints.at(-1)!.description).toBe(inXml(`${text}; ${text}; ${text}`));
      // Markup of the plan would be more elements than these.
      expect(
        gpx
          .match(/<(?!\/)[^>]*>/gu)!
          .filter((tag) => !tag.startsWith('<trkpt'))
          .map((tag) => /^<\??(\w+)/u.exec(tag)![1]),
      ).toEqual([
        'xml',
        'gpx',
        'metadata',
        'name',
        'desc',
        ...waypoints.flatMap(() => ['wpt', 'name', 'cmt', 'desc', 'type']),
        'trk',
        'name',
        'desc',
        'type',
        'trkseg',
      ]);
      const path = join(folder, 'hostile.gpx');
      writeFileSync(path, gpx);
      expect(peerOf(path).waypoints.map((waypoint) => waypoint.name)).toEqual(
        waypoints.map((waypoint) => waypoint.name),
      );
    });

    it('is whole as CSV, and no cell is a formula', () => {
      const rows = parse(toCsv(analysis), { columns: true, record_delimiter: '\r\n' }) as unknown as Record<
        string,
        string
      >[];
      expect(rows.length).toBeGreaterThan(10);
      for (const row of rows) {
        expect(['station', 'name', 'race', 'course'].map((column) => textOfCell(row[column]!))).toEqual([
          inText(`s1${text}`),
          inText(text),
          inText(text),
          inText(text),
        ]);
        for (const cell of Object.values(row)) expect(cell).not.toMatch(/^\s*[=+\-@\t\r\n](?![\d.]+$)/u);
      }
      expect(textOfCell(rows.at(-1)!['wording']!)).toBe(inText(`${text}, ${text}`));
    });

    it('is whole as GeoJSON', () => {
      const collection = JSON.parse(JSON.stringify(toGeoJson(analysis))) as ReturnType<typeof toGeoJson>;
      for (const { properties } of collection.features.filter((feature) => feature.properties?.['kind'] !== 'course'))
        expect([properties['station'], properties['name']]).toEqual([`s1${text}`, text]);
    });

    it('is whole as a calendar of one event', () => {
      const made = must(toCalendar(analysis, Date.UTC(2027, 0, 1)));
      const lines = made.split('\r\n');
      expect(lines.pop()).toBe('');
      for (const line of lines) {
        expect(line).not.toMatch(/[^\t\P{Cc}]|\p{Cs}/u);
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      }
      const calendar = new ICAL.Component(ICAL.parse(made));
      const [event, ...more] = calendar.getAllSubcomponents();
      expect(more).toEqual([]);
      const evened = inText(text).replaceAll(/\r\n?/gu, '\n');
      // ical.js leaves a property of RFC 7986 as it stands.
      const name = String(calendar.getFirstPropertyValue('name')).replaceAll(/\\(.)/gu, (_, sign: string) =>
        sign === 'n' ? '\n' : sign,
      );
      expect([name, event!.getFirstPropertyValue('summary'), event!.getFirstPropertyValue('location')]).toEqual([
        evened,
        `Station 1: ${evened}`,
        evened,
      ]);
      expect(event!.getAllProperties().map(({ name }) => name)).toEqual([
        'uid',
        'dtstamp',
        'dtstart',
        'dtend',
        'summary',
        'location',
        'geo',
        'description',
      ]);
    });
  },
);

const SPECTRUM = dirname(createRequire(import.meta.url).resolve('csv-spectrum'));

/** The cases of csv-spectrum: a CSV file each, and what it holds. */
const cases = readdirSync(join(SPECTRUM, 'csvs')).map((file) => {
  const held = JSON.parse(readFileSync(join(SPECTRUM, 'json', file.replace('.csv', '.json')), 'utf8')) as
    | Record<string, string>
    | Record<string, string>[];
  return { file, csv: readFileSync(join(SPECTRUM, 'csvs', file), 'utf8'), held: Array.isArray(held) ? held : [held] };
});

describe.each(cases)('csv-spectrum: $file', ({ csv, held }) => {
  const header = Object.keys(held[0]!);
  const rows = held.map((row) => header.map((column) => row[column]!));

  it('is written so that csv-parse reads what it holds', () => {
    const written = csvText([header, ...rows]);
    const read = parse(written, { record_delimiter: '\r\n' });
    expect(read.map((row) => row.map(textOfCell))).toEqual([header, ...rows]);
  });

  // One case has another telephone number in its JSON than in its CSV, and bare quotes: csv-parse, told to let those be, is the measure.
  it('is read by our own reader as csv-parse reads it', () => {
    expect(readDelimited(csv).records.map((record) => record.map((cell) => cell.text))).toEqual(
      parse(csv, { relax_quotes: true }),
    );
  });
});

it('csv-spectrum has its twelve cases', () => expect(cases).toHaveLength(12));
