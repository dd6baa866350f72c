/**
 * The nodes of every way of a file, some two bytes a node: differences of ids as variable-length integers (the "varint" and "zigzag"
 * of Protocol Buffers), since a multipolygon may ask for any way when all of them have been read.
 */
import { type NodeIndex, createNodeIndex } from './nodeIndex.ts';

const PAGE = 1 << 20;

export interface WayStore {
  readonly add: (id: number, refs: readonly number[]) => void;
  /** The ids of a way's nodes, `null` where the file has no such way. */
  readonly get: (id: number) => number[] | null;
  readonly size: () => number;
}

export function createWayStore(): WayStore {
  const pages: Uint8Array[] = [];
  let end = 0;
  // Of each way the place of its bytes: page and offset in the columns that nodes have for positions.
  const places: NodeIndex = createNodeIndex();

  const put = (byte: number): void => {
    if (end % PAGE === 0) pages.push(new Uint8Array(PAGE));
    pages[pages.length - 1]![end % PAGE] = byte;
    end++;
  };
  const putNumber = (value: number): void => {
    let left = value;
    while (left > 127) {
      put((left % 128) + 128);
      left = Math.floor(left / 128);
    }
    put(left);
  };
  let at = 0;
  const takeNumber = (): number => {
    let [value, scale] = [0, 1];
    for (;;) {
      const byte = pages[Math.floor(at / PAGE)]![at % PAGE]!;
      at++;
      value += (byte % 128) * scale;
      if (byte < 128) return value;
      scale *= 128;
    }
  };

  return {
    add: (id, refs) => {
      places.add(id, Math.floor(end / PAGE), end % PAGE);
      putNumber(refs.length);
      let before = 0;
      for (const ref of refs) {
        const step = ref - before;
        putNumber(step < 0 ? -2 * step - 1 : 2 * step);
        before = ref;
      }
    },
    get: (id) => {
      const slot = places.find(id);
      if (slot < 0) return null;
      at = places.lon(slot) * PAGE + places.lat(slot);
      const refs: number[] = [];
      let before = 0;
      for (let left = takeNumber(); left > 0; left--) {
        const coded = takeNumber();
        before += coded % 2 === 1 ? -(coded + 1) / 2 : coded / 2;
        refs.push(before);
      }
      return refs;
    },
    size: () => places.size(),
  };
}
