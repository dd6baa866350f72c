/** A street file clipped along a course: time over a bare pass of the XML parser, and what is held of what lies elsewhere. */
import { SaxesParser } from 'saxes';
import { createGroundClipper } from '@halfcup/core/ground';
import { courseOf, generator, windingLine } from './data.mjs';
import { inTurn } from './timing.mjs';

const ROUNDS = 5;
const PIECE = 262_144;

/** A town of streets with their nodes, `[west, south]` its corner: about 100 bytes a node, with ways of ten nodes each. */
function townText(count, [west, south], size, first) {
  const random = generator(7);
  const nodes = [];
  const ways = [];
  for (let k = 0; k < count; k += 10) {
    let [lon, lat] = [west + size * random(), south + size * random()];
    const refs = [];
    for (let n = 0; n < 10; n++) {
      const id = first + k + n;
      lon += 0.0004 * (random() - 0.5);
      lat += 0.0004 * (random() - 0.5);
      nodes.push(
        `<node id="${id}" version="1" timestamp="2026-10-02T04:00:00Z" lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"/>`,
      );
      refs.push(`<nd ref="${id}"/>`);
    }
    const kind = k % 40 === 0 ? '<tag k="building" v="yes"/>' : '<tag k="highway" v="residential"/>';
    const closed = k % 40 === 0 ? refs[0] : '';
    ways.push(
      `<way id="${first + k}" version="1" timestamp="2026-10-02T04:00:00Z">\n${refs.join('\n')}${closed}\n${kind}<tag k="name" v="Street ${k}"/></way>`,
    );
  }
  return { nodes, ways };
}

const documentOf = (...towns) =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">\n${towns.flatMap(({ nodes }) => nodes).join('\n')}\n${towns.flatMap(({ ways }) => ways).join('\n')}\n</osm>\n`;

function clip(bytes, course) {
  const clipper = createGroundClipper('bench.osm', [course], 300);
  for (let at = 0; at < bytes.length; at += PIECE) clipper.write(bytes.subarray(at, at + PIECE));
  return clipper;
}

export function benchGround(report) {
  // 20 km; the town is twice as wide and high as the course.
  const course = courseOf(windingLine(10_000, 2));
  const [west, east] = [Math.min(...course.lon), Math.max(...course.lon)];
  const [south, north] = [Math.min(...course.lat), Math.max(...course.lat)];
  const size = 1.5 * Math.max(east - west, north - south);
  const corner = [(west + east - size) / 2, (south + north - size) / 2];
  const text = documentOf(townText(107_000, corner, size, 1));
  const bytes = new TextEncoder().encode(text);
  const bare = () => {
    const parser = new SaxesParser();
    parser.write(text);
    parser.close();
  };
  const ours = () => {
    const read = clip(bytes, course).close();
    if (!read.ok) throw new Error(read.findings[0].message);
    return read.value.ground;
  };
  const { ratio } = inTurn(ours, bare, ROUNDS);
  const work = `clip OpenStreetMap XML of 107,000 nodes (${(text.length / 1e6).toFixed(1)} MB) along 20 km`;
  report(work, 'time over a bare saxes pass', 1 / ratio, '×', 'at most', 3);
  benchElsewhere(report, course, corner, size);
}

/** What a file grows by when towns far away are added to it. */
function benchElsewhere(report, course, corner, size) {
  // Once more for what the first collection has freed of buffers.
  const collect = () => [1, 2, 3].forEach(() => globalThis.gc?.());
  const held = (bytes) => {
    collect();
    const before = process.memoryUsage();
    const clipper = clip(bytes, course);
    collect();
    const after = process.memoryUsage();
    const read = clipper.close();
    if (!read.ok) throw new Error(read.findings[0].message);
    return after.arrayBuffers + after.heapUsed - before.arrayBuffers - before.heapUsed;
  };
  const encode = (text) => new TextEncoder().encode(text);
  const near = townText(60_000, corner, size, 1);
  const far = townText(600_000, [corner[0] + 20, corner[1]], size, 1_000_001);
  const [small, large] = [encode(documentOf(near)), encode(documentOf(near, far))];
  held(small);
  const grown = (held(large) - held(small)) / 600_000;
  report('clip a map with 600,000 more nodes far from the course', 'memory a node', grown, ' bytes', 'at most', 24);
}
