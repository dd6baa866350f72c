/** The shortest examples of core, run as an outsider would run them, good input and bad. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CORE, ROOT } from './support/build.ts';
import { OCEAN, go, gpxText, straight } from './support/courses.ts';
import { documentIn, folderWith, halfcupIn } from './support/halfcup.ts';

const EXAMPLES = join(CORE, 'examples');
/** Lines of code: neither empty nor a comment. */
const linesOf = (name: string): number =>
  readFileSync(join(EXAMPLES, name), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '' && !/^\s*(?:\/\*|\/\/)/u.test(line)).length;
const points = straight(OCEAN, 90, 51, 100);
const [tap, far] = [go(points[20]!, 0, 5), go(points[20]!, 0, 900)];
const folder = folderWith({
  'back.gpx': gpxText([[...points, ...points.toReversed()]], [{ at: tap, name: 'Tap' }]),
  'stations.csv': `name,longitude,latitude\r\nTap,${tap.join(',')}\r\nFar,${far.join(',')}\r\n`,
  'odd.csv': 'name,longitude,latitude\nTap,here,there\n',
});

describe('join-csv.mjs', () => {
  const joined = (...args: readonly string[]): { status: number | null; stdout: string; stderr: string } =>
    spawnSync(process.execPath, [join(EXAMPLES, 'join-csv.mjs'), ...args], { cwd: folder, encoding: 'utf8' });

  it('is shorter than 20 lines', () => expect(linesOf('join-csv.mjs')).toBeLessThan(20));

  it('gives each pass of each station, as the command finds them', async () => {
    const { status, stdout, stderr } = joined('back.gpx', 'stations.csv');
    expect([status, stderr]).toEqual([0, '']);
    const { points: snapped } = (await documentIn(folder, 'snap', 'back.gpx')) as {
      points: { passes: { measure: number; side: string }[] }[];
    };
    expect(parse(stdout, { columns: true })).toEqual(
      snapped[0]!.passes.map(({ measure, side }) => ({
        name: 'Tap',
        'course distance (m)': measure.toFixed(1),
        side,
      })),
    );
  });

  it.each([
    [['stations.csv', 'stations.csv'], 'stations.csv:1:1: '],
    [['back.gpx', 'odd.csv'], 'longitude first'],
    [['back.gpx', 'none.csv'], 'no such file'],
    [[], 'path'],
  ])('says of %j what is wrong, without a trace', (args, says) => {
    const { status, stdout, stderr } = joined(...args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain(says);
    expect(stderr).not.toMatch(/^\s+at /mu);
  });
});

describe('service.mjs', () => {
  let service: ReturnType<typeof spawn>;
  let address: string;
  beforeAll(async () => {
    service = spawn(process.execPath, [join(EXAMPLES, 'service.mjs'), '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
    const [port] = (await once(service.stdout!, 'data')) as [Buffer];
    address = `http://127.0.0.1:${String(port).trim()}`;
  });
  afterAll(async () => {
    const gone = once(service, 'exit');
    service.kill();
    await gone;
  });
  const ask = async (body: string, path = '/review', method = 'POST'): Promise<readonly [number, Answer]> => {
    const answer = await fetch(address + path, { method, ...(method === 'GET' ? {} : { body }) });
    return [answer.status, (await answer.json()) as Answer];
  };

  it('is shorter than 40 lines', () => expect(linesOf('service.mjs')).toBeLessThan(40));

  it('gives the findings of a plan with their places, as the command does', async () => {
    const demo = join(ROOT, 'fixtures/demo');
    const [plan, ...rest] = ['plan.json', 'full.gpx', 'half.gpx', 'ground.geojson'].map((name) =>
      readFileSync(join(demo, name), 'utf8'),
    );
    const [status, { findings }] = await ask(
      JSON.stringify({ plan, files: { 'full.gpx': rest[0], 'half.gpx': rest[1], 'ground.geojson': rest[2] } }),
    );
    const review = JSON.parse((await halfcupIn(demo, 'review', 'plan.json', '--json')).out) as Answer;
    expect(status).toBe(200);
    expect(findings).toEqual(review.findings);
    expect(findings!.every(({ where }) => where.line !== undefined)).toBe(true);
  });

  it.each([
    ['not JSON', 'POST', '/review', '{', 400],
    ['nothing', 'POST', '/review', 'null', 422],
    ['no plan', 'POST', '/review', '{ "plan": 7 }', 422],
    ['a broken plan', 'POST', '/review', '{ "plan": "{" }', 422],
    ['a file that is no text', 'POST', '/review', '{ "plan": {}, "files": { "a.gpx": 1 } }', 400],
    ['another place', 'POST', '/', '{}', 404],
    ['another way to ask', 'GET', '/review', '', 405],
  ])('answers %s with its problems', async (_, method, path, body, status) => {
    const [told, { problems }] = await ask(body, path, method);
    expect(told).toBe(status);
    expect(problems![0]!.message.length).toBeGreaterThan(10);
  });

  it('refuses a body that is too large, and goes on', async () => {
    const told = await ask('x'.repeat(20_000_001)).then(
      ([status]) => status,
      () => 413,
    );
    expect(told).toBe(413);
    expect((await ask('{', '/review'))[0]).toBe(400);
  });
});

interface Answer {
  readonly findings?: readonly { readonly where: { readonly line?: number } }[];
  readonly problems?: readonly { readonly message: string }[];
}
