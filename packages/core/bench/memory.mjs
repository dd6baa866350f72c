/** Run as a child: reads the GPX file named second with the reader named first, prints milliseconds and peak memory in MB. */
import { readFileSync } from 'node:fs';

const [, , reader, file] = process.argv;
const text = readFileSync(file, 'utf8');
const from = performance.now();
if (reader === 'halfcup') {
  const { readGpx } = await import('@halfcup/core/gpx');
  const read = readGpx(text, 'bench.gpx');
  if (!read.ok) throw new Error(read.findings[0].message);
} else {
  const { default: GpxParser } = await import('gpxparser');
  const parser = new GpxParser();
  parser.parse(text);
  if (parser.tracks.length !== 1) throw new Error('gpxparser read no track');
}
const ms = performance.now() - from;
process.stdout.write(JSON.stringify({ ms, peakMb: process.resourceUsage().maxRSS / 1024 }));
