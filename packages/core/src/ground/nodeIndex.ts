/**
 * Where each node of a file is, in 16 bytes a node: columns of ids and of positions in 1e-7 of a degree, page by page, searched by
 * halving. Files have their nodes in order of ids, mostly; where one has not, its index is sorted once, when it is first asked.
 */

/** Nodes on a page. */
const PAGE = 65_536;

export interface NodeIndex {
  /** `lon`, `lat`: whole numbers of 1e-7 of a degree. */
  readonly add: (id: number, lon: number, lat: number) => void;
  /** The slot of a node, −1 where the file has none of the id. */
  readonly find: (id: number) => number;
  readonly lon: (slot: number) => number;
  readonly lat: (slot: number) => number;
  readonly size: () => number;
  /** Whether all ids so far came in ascending order: what is not found then may only follow. */
  readonly ordered: () => boolean;
}

interface Page {
  readonly ids: Float64Array;
  readonly lons: Int32Array;
  readonly lats: Int32Array;
}

export function createNodeIndex(): NodeIndex {
  let pages: Page[] = [];
  let size = 0;
  let ordered = true;
  let sorted = true;
  let lastId = -Infinity;
  let lastSlot = -1;

  const idAt = (slot: number): number => pages[Math.floor(slot / PAGE)]!.ids[slot % PAGE]!;
  const add = (id: number, lon: number, lat: number): void => {
    const at = size % PAGE;
    if (at === 0) pages.push({ ids: new Float64Array(PAGE), lons: new Int32Array(PAGE), lats: new Int32Array(PAGE) });
    const page = pages[pages.length - 1]!;
    page.ids[at] = id;
    page.lons[at] = lon;
    page.lats[at] = lat;
    if (id < lastId) [ordered, sorted] = [false, false];
    lastId = id;
    size++;
  };

  const sort = (): void => {
    const order = Uint32Array.from({ length: size }, (_, k) => k).sort((a, b) => idAt(a) - idAt(b) || a - b);
    const before = pages;
    pages = [];
    [size, lastId, sorted] = [0, -Infinity, true];
    for (const slot of order) {
      const { ids, lons, lats } = before[Math.floor(slot / PAGE)]!;
      add(ids[slot % PAGE]!, lons[slot % PAGE]!, lats[slot % PAGE]!);
    }
  };

  const find = (id: number): number => {
    if (!sorted) sort();
    // Nodes of a way often follow one another.
    if (lastSlot + 1 < size && idAt(lastSlot + 1) === id) return ++lastSlot;
    let [low, high] = [0, size - 1];
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if (idAt(middle) <= id) low = middle;
      else high = middle - 1;
    }
    if (size === 0 || idAt(low) !== id) return -1;
    lastSlot = low;
    return low;
  };

  return {
    add,
    find,
    lon: (slot) => pages[Math.floor(slot / PAGE)]!.lons[slot % PAGE]!,
    lat: (slot) => pages[Math.floor(slot / PAGE)]!.lats[slot % PAGE]!,
    size: () => size,
    ordered: () => ordered,
  };
}
