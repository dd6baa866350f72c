import { describe, expect, it } from 'vitest';
import { gatherFiles } from '../state/open/gather.ts';
import { openFiles, openGathered } from '../state/open/open.ts';
import { nudge } from '../state/edits/moves.ts';
import { receive } from '../state/open/receive.ts';
import { createStore } from '../state/store/store.ts';
import { DEMO_NAMES, demoFile, openDemo, openedFrom, textFile } from '../testing.ts';
import { arrived, blocksOf, plainOpening, plainWaiting, waitingOf } from './messages.ts';
import { isZip, packed, unpacked } from './zip.ts';

/** As a worker's message goes: copied, but for the memory that is handed over. */
const passed = <T>(value: T, transfer: ArrayBuffer[] = []): T => structuredClone(value, { transfer });

describe('what passes between the threads', () => {
  it('opens the very plan that the page itself would have opened', () => {
    const plain = plainOpening(openFiles(DEMO_NAMES.map(demoFile), null));
    const open = openedFrom(arrived(passed(plain, blocksOf(plain))));
    const here = openDemo();
    expect(open.document.text).toBe(here.document.text);
    expect(open.findings).toEqual(here.findings);
    expect(open.analysis.stations).toEqual(here.analysis.stations);
    expect(open.analysis.courses.map(({ course, tangles }) => ({ course, tangles }))).toEqual(
      here.analysis.courses.map(({ course, tangles }) => ({ course, tangles })),
    );
    expect(open.analysis.kept).toBeDefined();
    // What the worker made is gone on from, not made again.
    const store = createStore();
    receive(store, [], { kind: 'opened', plan: open });
    nudge(store, 's1', 10);
    expect(store.open.value!.analysis.courses).toBe(open.analysis.courses);
  });

  it('hands over the memory of every column once', () => {
    const plain = plainOpening(openFiles(DEMO_NAMES.map(demoFile), null));
    const blocks = blocksOf(plain);
    expect(new Set(blocks).size).toBe(blocks.length);
    passed(plain, blocks);
    expect(blocks.every(({ byteLength }) => byteLength === 0)).toBe(true);
    if (plain.kind !== 'opened') throw new Error('the demo is not open');
    expect(
      [...plain.plan.files.gpx.values()].flatMap(({ tracks }) =>
        tracks.flatMap(({ segments }) => segments.map(({ lon }) => lon.length)),
      ),
    ).toEqual([0, 0]);
  });

  it('carries a plan that waits, both ways, and a refusal', () => {
    const gathered = gatherFiles([demoFile('plan.json'), demoFile('full.gpx')], null);
    if (gathered.kind !== 'waiting') throw new Error('the plan does not wait');
    const again = waitingOf(passed(plainWaiting(gathered.plan)));
    const added = gatherFiles([demoFile('half.gpx')], again);
    expect(added.kind).toBe('ready');
    const refused = gatherFiles([textFile('bad.gpx', '<gpx')], null);
    expect(arrived(passed(plainOpening(openGathered(refused))))).toEqual(refused);
  });

  it('keeps the bytes of every file under the name that the plan has for it', async () => {
    const { originals } = openDemo().files;
    expect([...originals.keys()].toSorted()).toEqual(['context.geojson', 'full.gpx', 'half.gpx']);
    for (const [name, blob] of originals)
      expect(Buffer.from(await blob.arrayBuffer()).equals(demoFile(name).bytes), name).toBe(true);
  });
});

describe('a plan packed with its files', () => {
  it('is unpacked to the very bytes, in folders too', () => {
    const files = [demoFile('plan.json'), { ...demoFile('full.gpx'), name: 'ways/full.gpx' }];
    const zip = packed(files);
    expect(isZip(zip)).toBe(true);
    const again = unpacked({ name: 'demo.zip', bytes: zip });
    expect(again.ok && again.value.map(({ name, bytes }) => [name, bytes.length])).toEqual(
      files.map(({ name, bytes }) => [name, bytes.length]),
    );
    expect(again.ok && again.value[0]?.bytes).toEqual(files[0]!.bytes);
  });

  it('holds no path that leads out of the folder in which it is unpacked', () => {
    const again = unpacked({
      name: 'x.zip',
      bytes: packed([{ ...demoFile('plan.json'), name: '../../up\\plan.json' }]),
    });
    expect(again.ok && again.value.map(({ name }) => name)).toEqual(['up/plan.json']);
  });

  it('that is cut off is refused with what to do', () => {
    const again = unpacked({ name: 'cut.zip', bytes: packed([demoFile('plan.json')]).subarray(0, 400) });
    expect(again.ok).toBe(false);
    expect(again.findings[0]?.message).toMatch(/could not be unpacked.*cut off/u);
  });
});
