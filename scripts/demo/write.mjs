// Text of the demo's files: GPX 1.1, and JSON with one station, feature or wave to a line.

const escape = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
const place = ([lon, lat]) => `lat="${lat.toFixed(7)}" lon="${lon.toFixed(7)}"`;

/** A GPX 1.1 file of one track with heights; waypoints are { name, at, height }. */
export function gpxText({ name, description, points, waypoints = [] }) {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Halfcup demo island" xmlns="http://www.topografix.com/GPX/1/1">',
    `  <metadata><name>${escape(name)}</name><desc>${escape(description)}</desc></metadata>`,
    ...waypoints.map(
      (w) => `  <wpt ${place(w.at)}><ele>${w.height.toFixed(1)}</ele><name>${escape(w.name)}</name></wpt>`,
    ),
    '  <trk>',
    `    <name>${escape(name)}</name>`,
    '    <trkseg>',
    ...points.map((p) => `      <trkpt ${place(p)}><ele>${p[2].toFixed(1)}</ele></trkpt>`),
    '    </trkseg>',
    '  </trk>',
    '</gpx>',
  ];
  return `${lines.join('\n')}\n`;
}

const inline = (value) => {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const pairs = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${inline(item)}`);
  return pairs.length > 0 ? `{ ${pairs.join(', ')} }` : '{}';
};

/** JSON that breaks lines only where a value would pass 110 columns. */
export function jsonText(value, indent = '', head = 0) {
  const flat = inline(value);
  if (value === null || typeof value !== 'object' || indent.length + head + flat.length <= 110) return flat;
  const inner = `${indent}  `;
  const rows = Array.isArray(value)
    ? value.map((item) => inner + jsonText(item, inner))
    : Object.entries(value).map(
        ([key, item]) => `${inner}${JSON.stringify(key)}: ${jsonText(item, inner, key.length + 4)}`,
      );
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${rows.join(',\n')}\n${indent}${close}`;
}

/** A GeoJSON collection, one feature to a line. */
export const collectionText = (features) =>
  `{"type":"FeatureCollection","features":[\n${features.map((f) => JSON.stringify(f)).join(',\n')}\n]}\n`;
