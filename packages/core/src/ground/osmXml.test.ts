/** OpenStreetMap XML that ends, begins or is dated in an unusual way. Source: OpenStreetMap wiki, "OSM XML"; XML 1.0 (5th ed.). */
import { expect, it } from 'vitest';
import { findingLine } from '../finding.ts';
import { ORIGIN, courseThrough, from } from '../testing/courses.ts';
import { createGroundClipper } from './clipper.ts';

const COURSE = courseThrough([ORIGIN, from(ORIGIN, 90, 1000)]);
const clipped = (text: string) => {
  const clipper = createGroundClipper('town.osm', [COURSE], 300);
  clipper.write(new TextEncoder().encode(text));
  return clipper.close();
};
const said = (text: string): string[] => clipped(text).findings.map(findingLine);
const GATE = `<node id="1" timestamp="2020-02-03T00:00:00Z" lat="${ORIGIN[1]}" lon="${ORIGIN[0]}"><tag k="barrier" v="gate"/></node>`;
const dateOf = (text: string): unknown => {
  const result = clipped(text);
  return result.ok && result.value.ground.source.date;
};

it('the head’s day counts before that of elements; a head without one leaves it as it is', () => {
  expect(dateOf(`<osm>${GATE}</osm>`)).toBe('2020-02-03');
  expect(dateOf(`<osm><meta/>${GATE}</osm>`)).toBe('2020-02-03');
  expect(dateOf(`<osm timestamp="2026-10-02T00:00:00Z"><meta/>${GATE}</osm>`)).toBe('2026-10-02');
  expect(dateOf(`<osm timestamp="2026-10-02T00:00:00Z"><meta osm_base="2026-10-03T00:00:00Z"/>${GATE}</osm>`)).toBe(
    '2026-10-03',
  );
});

it('a file is cut off where a comment behind its outermost element does not end', () => {
  expect(said(`<osm>${GATE}</osm><!-- by me -->`)).toEqual([]);
  expect(said(`<osm>${GATE}</osm>\n<!-- by`)).toEqual([
    'town.osm:2:8: The file ends in the middle of the XML: it was cut off. Download or save it again.',
  ]);
});

it('a file has one outermost element', () =>
  expect(said(`<osm>${GATE}</osm>\n<osm/>`)[0]).toContain(
    'town.osm:2:5: A second outermost element follows the end of <osm>.',
  ));

it('a web page is told though it is no XML', () => {
  expect(said('<html lang=en><p>Gone')[0]).toContain('town.osm:1:1: This is a web page (HTML)');
  expect(said('<HTML LANG=EN>')[0]).toContain('This is a web page (HTML)');
});
