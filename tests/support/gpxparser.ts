/** Another reader of GPX, gpxparser 3 (MIT), in a process of its own: it puts the names of a browser into the global scope. */
import { execFileSync } from 'node:child_process';

export interface PeerPoint {
  readonly lat: number;
  readonly lon: number;
  readonly ele: number | null;
}
export interface PeerLine {
  readonly name: string | null;
  readonly points: readonly PeerPoint[];
}
export interface Peer {
  readonly name: string | null;
  readonly tracks: readonly PeerLine[];
  readonly routes: readonly PeerLine[];
  readonly waypoints: readonly (PeerPoint & {
    readonly name: string | null;
    readonly cmt: string | null;
    readonly desc: string | null;
  })[];
}

const SCRIPT = `
const parser = new (require('gpxparser'))();
parser.parse(require('node:fs').readFileSync(process.argv[1], 'utf8'));
const { metadata, tracks, routes, waypoints } = parser;
const lines = (list) => list.map(({ name, points }) => ({ name, points: points.map(({ lat, lon, ele }) => ({ lat, lon, ele })) }));
console.log(JSON.stringify({ name: metadata.name ?? null, tracks: lines(tracks), routes: lines(routes), waypoints: waypoints.map(({ lat, lon, ele, name, cmt, desc }) => ({ lat, lon, ele, name, cmt, desc })) }));
`;

/** What gpxparser makes of a file. */
export const peerOf = (path: string): Peer =>
  JSON.parse(
    execFileSync(process.execPath, ['-e', SCRIPT, path], {
      cwd: import.meta.dirname,
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    }),
  ) as Peer;
