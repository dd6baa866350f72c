import { expect, it } from 'vitest';
import type { GpxDocument } from '../../gpx/document.ts';
import { readGpx } from '../../gpx/read.ts';
import { valueOf } from '../../testing/courses.ts';
import { offeredCourse } from './offer.ts';

const segment = (...lons: readonly number[]): string =>
  `<trkseg>${lons.map((lon) => `<trkpt lat="-33.2" lon="${lon}"/>`).join('')}</trkseg>`;
const waypoint = (lon: number, name: string): string => `<wpt lat="-33.2" lon="${lon}"><name>${name}</name></wpt>`;
const gpx = (body: string, name = ''): GpxDocument =>
  valueOf(
    readGpx(
      `<gpx version="1.1" creator="me">${name === '' ? '' : `<metadata><name>${name}</name></metadata>`}${body}</gpx>`,
      'maps/Shore Mile.gpx',
    ),
  );
const LINE = `<trk>${segment(-17.4, -17.38, -17.36)}</trk>`;

it('is called by its line, else by the document, else by the file without its folder and ending', () => {
  const nameOf = (document: GpxDocument): string => valueOf(offeredCourse({ gpx: 'a.gpx' }, document)).name;
  expect(nameOf(gpx(LINE.replace('<trk>', '<trk><name>Loop</name>'), 'Harbour Race'))).toBe('Loop');
  expect(nameOf(gpx(LINE, 'Harbour Race'))).toBe('Harbour Race');
  expect(nameOf(gpx(LINE))).toBe('Shore Mile');
});

it('counts waypoints that look like stations and those that name a distance', () => {
  const waypoints = [waypoint(-17.395, 'Water 1'), waypoint(-17.385, 'Water 2'), waypoint(-17.3893, '1 km')];
  const { stations, distances } = valueOf(offeredCourse({ gpx: 'a.gpx' }, gpx(waypoints.join('') + LINE)));
  expect([stations, distances]).toEqual([2, 1]);
});

it('is none where its line has a gap that nobody has decided on, and says so with the flaws of the track', () => {
  const point = (lon: number, lat: number): string => `<trkpt lat="${lat}" lon="${lon}"/>`;
  const spike = [point(-17.39, -33.199), point(-17.3899, -33.2), point(-17.388, -33.2)].join('');
  const before = segment(-17.394, -17.392, -17.39).replace('</trkseg>', `${spike}</trkseg>`);
  const broken = gpx(`<trk>${before}${segment(-17.37, -17.368)}</trk>`);
  const refused = offeredCourse({ gpx: 'a.gpx' }, broken);
  expect([refused.ok, refused.findings.map(({ code }) => code)]).toEqual([false, ['gap-refused', 'track-spike']]);
  const joined = offeredCourse({ gpx: 'a.gpx', gaps: 'join' }, broken);
  expect([joined.ok, joined.findings.map(({ code }) => code)]).toEqual([true, ['gap-joined', 'track-spike']]);
});

it('is none where the file has no line', () => {
  const refused = offeredCourse({ gpx: 'a.gpx' }, gpx(waypoint(-17.39, 'Tap')));
  expect(refused.ok).toBe(false);
  expect(refused.findings.filter(({ severity }) => severity === 'error')).toHaveLength(1);
});
