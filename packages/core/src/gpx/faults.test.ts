import { describe, expect, test } from 'vitest';
import type { Finding } from '../finding.ts';
import { readGpx } from './read.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const track = (body: string): string => `<gpx>\n<trk><trkseg>\n  ${body}\n</trkseg></trk>\n</gpx>`;
const shown = ({ code, severity, where, message }: Finding): string =>
  `${severity} ${code} ${where.line}:${where.column} ${message}`;

function refusals(input: string | Uint8Array): readonly string[] {
  const result = readGpx(input, 'a.gpx');
  expect(result.ok).toBe(false);
  for (const { where } of result.findings) expect(where.file).toBe('a.gpx');
  return result.findings.map((finding) => shown(finding));
}

describe('A file that is no GPX is refused, with its place and what to do:', () => {
  test.each([
    ['empty', '', 'gpx-empty 1:1', 'empty'],
    ['white space only', ' \n\n', 'gpx-empty 3:1', 'empty'],
    ['a byte order mark only', '\u{FEFF}', 'gpx-empty 1:1', 'empty'],
    ['plain text', '\n  lat,lon\n1,2\n', 'gpx-not-xml 2:3', '“lat,lon 1,2”'],
    ['JSON', '{"type":"FeatureCollection"}', 'gpx-not-xml 1:1', 'JSON'],
    ['a web page', '<!DOCTYPE html>\n<html><body>', 'gpx-not-xml 1:1', 'web page'],
    ['a web page in small letters', '\n<!doctype HTML><html>', 'gpx-not-xml 2:1', 'web page'],
    ['a web page without a doctype', '<html><head><meta charset=utf-8>', 'gpx-not-xml 1:1', 'web page'],
    [
      'another kind of XML',
      '<?xml version="1.0"?>\n<!-- x -->\n <kml xmlns="urn:k"><gpx/></kml>',
      'gpx-not-gpx 3:2',
      '<kml>',
    ],
    ['a foreign element called gpx', '<f:GPX xmlns:f="urn:f"/>', 'gpx-not-gpx 1:1', '<f:GPX>'],
    ['comments only', '<!-- nothing -->', 'gpx-truncated 1:17', 'before'],
    ['cut off inside the segment', '<gpx><trk>\n<trkseg><trkpt lat="1" lon="2"/>', 'gpx-truncated 2:33', '<trkseg>'],
    ['cut off inside a tag', '<gpx><trk>\n<trkseg><trkpt lat="1" lo', 'gpx-truncated 2:26', 'cut off'],
    ['cut off inside a comment at the end', '<gpx></gpx>\n<!-- ', 'gpx-truncated 2:6', 'cut off'],
    ['a DOCTYPE', '<?xml version="1.0"?>\n <!DOCTYPE gpx SYSTEM "gpx.dtd">\n<gpx/>', 'gpx-doctype 2:2', 'DOCTYPE'],
    [
      'an entity declaration',
      '<!DOCTYPE gpx [\n<!ENTITY a "b">\n<!ENTITY c "&a;&a;">]>\n<gpx><name>&c;</name></gpx>',
      'gpx-doctype 1:1',
      'entities',
    ],
    ['a DOCTYPE without end', '<!-- <a> -->\n<!DOCTYPE gpx [ <!ENTITY a "b">', 'gpx-doctype 2:1', 'DOCTYPE'],
    ['a NUL after good text', '<gpx>\n<trk>\0\0\0', 'gpx-binary 2:6', 'NUL'],
  ])('%s.', (_, text, head, word) => {
    for (const input of [text, bytes(text)]) {
      const [first, ...rest] = refusals(input);
      expect(first).toContain(`error ${head} `);
      expect(first).toContain(word);
      expect(rest).toEqual([]);
    }
  });

  test('invalid bytes, at the line and column where they stand.', () => {
    const [first] = refusals(Uint8Array.from(Buffer.from('<gpx>\n<name>Caf\u{E9}</name></gpx>', 'latin1')));
    expect(first).toContain('error gpx-encoding 2:10 The byte 0xE9');
  });

  test('an encoding that is not supported.', () => {
    expect(refusals(bytes('<?xml version="1.0" encoding="EBCDIC-CP-US"?><gpx/>'))[0]).toContain(
      'error gpx-encoding 1:1 The file is in the encoding “EBCDIC-CP-US”',
    );
  });

  test('compressed.', () => {
    expect(refusals(Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0))[0]).toContain(
      'error gpx-binary 1:1 This is a compressed file',
    );
  });
});

// XML 1.0 (5th ed.): each is a fatal error of well-formedness.
describe('XML that is not well formed is refused in plain words:', () => {
  test.each([
    ['tags that cross', '<gpx>\n<trk><trkseg>\n</trk></gpx>', '3:1', 'Add </trkseg> before it.'],
    ['a closing tag too many', '<gpx/>\n</trk>', '2:6', '</trk>'],
    ['a plain &', '<gpx>\n<name>Sand & Sea; x</name></gpx>', '2:17', '&amp;'],
    ['an unknown entity', '<gpx><name>caf&eacute;</name></gpx>', '1:22', '&amp;'],
    ['a number for no character', '<gpx><name>&#0;</name></gpx>', '1:15', 'numbered character'],
    ['an attribute without quotes', '<gpx version=1.1/>', '1:14', 'no quotes around it'],
    ['an attribute without value', '<gpx version>', '1:13', 'has no value'],
    ['an attribute twice', '<gpx><wpt lat="1" lat="2" lon="3"/></gpx>', '1:35', 'lat twice'],
    ['attributes without space', '<gpx a="1"b="2"/>', '1:11', 'no space between'],
    ['a second outermost element', '<gpx></gpx>\n<gpx></gpx>', '2:5', 'joined'],
    ['a declaration that is late', '\n<?xml version="1.0"?><gpx/>', '2:6', 'very first'],
    ['text after the end', '<gpx/>\nhello', '2:5', 'outside'],
    ['a < in text', '<gpx><name>1 < 2</name></gpx>', '1:15', '&lt;'],
    ['a control character', '<gpx><name>a\u{1}b</name></gpx>', '1:13', 'control character'],
    ['a bad comment', '<gpx><!-- a -- b --></gpx>', '1:15', 'comment'],
  ])('%s.', (_, text, place, word) => {
    const found = refusals(text);
    expect(found[0]).toContain(`error gpx-malformed ${place} `);
    expect(found[0]).toContain(word);
    expect(found).toHaveLength(1);
  });
});

describe('A point whose position cannot stand is an error at its tag:', () => {
  test.each([
    ['no lat', 'lon="2"', 'gpx-latitude', 'This point has no latitude.'],
    ['no lon', 'lat="2"', 'gpx-longitude', 'This point has no longitude.'],
    ['a word', 'lat="north" lon="2"', 'gpx-latitude', 'The latitude is “north”. It should be a number from -90 to 90.'],
    ['nothing', 'lat="" lon="2"', 'gpx-latitude', 'The latitude is empty.'],
    ['trailing letters', 'lat="12abc" lon="2"', 'gpx-latitude', '“12abc”'],
    ['hexadecimal', 'lat="1" lon="0x10"', 'gpx-longitude', '“0x10”'],
    ['a decimal comma', 'lat="1,5" lon="2"', 'gpx-latitude', 'decimal point'],
    ['a not-a-number mark', 'lat="NaN" lon="2"', 'gpx-latitude', '“not a number”'],
    ['an infinity', 'lat="1" lon="INF"', 'gpx-longitude', '“INF”'],
    ['too large for a number', 'lat="1" lon="1e999"', 'gpx-longitude', 'too large'],
    [
      'a latitude beyond 90',
      'lat="95" lon="120"',
      'gpx-latitude',
      'The latitude is 95. It should be from -90 to 90. Correct it',
    ],
    ['values that look swapped', 'lat="-150.25" lon="12"', 'gpx-latitude', 'look swapped'],
    ['a longitude from 0 to 360', 'lat="1" lon="190.5"', 'gpx-longitude', 'here that gives -169.5'],
    [
      'a longitude beyond 360',
      'lat="1" lon="-999"',
      'gpx-longitude',
      'The longitude is -999. It should be from -180 to 180.',
    ],
  ])('%s.', (_, attributes, code, message) => {
    const found = refusals(track(`<trkpt ${attributes}><ele>1</ele></trkpt>`));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`error ${code} 3:3 `);
    expect(found[0]).toContain(message);
    expect(found[0]).not.toContain('NaN');
  });

  test('Both faults of a point, and the faults of all points, routes and waypoints, are listed in their order.', () => {
    const text = '<gpx>\n<wpt lat="a" lon="b"/>\n<rte><rtept/></rte>\n<trk><trkseg><trkpt lat="91" lon="1"/>';
    expect(refusals(text).map((line) => line.split(' ').slice(0, 3).join(' '))).toEqual([
      'error gpx-latitude 2:1',
      'error gpx-longitude 2:1',
      'error gpx-latitude 3:6',
      'error gpx-longitude 3:6',
      'error gpx-latitude 4:14',
      'error gpx-truncated 4:39',
    ]);
  });

  test('Measured value and limits go with it.', () => {
    const [finding] = readGpx(track('<trkpt lat="95" lon="2"/>'), 'a.gpx').findings;
    expect(finding).toMatchObject({ measured: 95, limit: [-90, 90], unit: 'degrees' });
  });

  test('The first 20 of a kind are listed, the rest is counted.', () => {
    const result = readGpx(track('<trkpt lat="95" lon="120"/>'.repeat(1000)), 'a.gpx');
    expect(result.findings).toHaveLength(21);
    expect(result.findings[20]).toMatchObject({ code: 'gpx-latitude', severity: 'error' });
    expect(result.findings[20]?.message).toBe('980 more of the same kind are not listed; there are 1,000 in all.');
  });
});

function warned(text: string): { readonly lines: readonly string[]; readonly ele: unknown } {
  const result = readGpx(text, 'a.gpx');
  if (!result.ok) throw new Error('refused');
  return {
    lines: result.findings.map((finding) => shown(finding)),
    ele: Array.from(result.value.tracks[0]?.segments[0]?.ele ?? []),
  };
}

describe('A fault that costs no position is a warning:', () => {
  test.each([
    ['high', '“high”'],
    ['', 'The elevation is empty.'],
    ['1,5', 'decimal point'],
    ['12m', '“12m”'],
  ])('an elevation of "%s", which is left out.', (ele, word) => {
    const { lines, ele: column } = warned(track(`<trkpt lat="1" lon="2">\n <ele>${ele}</ele></trkpt>`));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('warning gpx-elevation 4:2 ');
    expect(lines[0]).toContain(word);
    expect(column).toEqual([NaN]);
  });

  test('a dilution of precision that is no number.', () => {
    const result = readGpx('<gpx><wpt lat="1" lon="2"><hdop>good</hdop></wpt></gpx>', 'a.gpx');
    expect(result).toMatchObject({
      ok: true,
      value: { waypoints: [{ hdop: null }] },
      findings: [{ code: 'gpx-hdop', severity: 'warning' }],
    });
  });

  test('points outside of a segment, which are left out.', () => {
    const { lines, ele } = warned(
      '<gpx><trk>\n <trkpt lat="1" lon="2"/><trkseg><wpt lat="1" lon="2"/></trkseg></trk></gpx>',
    );
    expect(lines[0]).toContain(
      'warning gpx-misplaced 2:2 This <trkpt> is left out, with everything in it. It should be directly inside <trkseg>.',
    );
    expect(lines[1]).toContain(
      'warning gpx-misplaced 2:34 This <wpt> is left out, with everything in it. It should be directly inside <gpx>.',
    );
    expect(ele).toEqual([]);
  });
});
