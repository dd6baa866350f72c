/** Ways of a multipolygon, by their nodes, joined end to end into closed rings. Source: OpenStreetMap wiki, "Relation:multipolygon". */

/** Closed lists of nodes, in the order in which the first way of each came; `null` where some way is left over. */
export function joinRings(ways: readonly (readonly number[])[]): number[][] | null {
  const rings: number[][] = [];
  const byEnd = new Map<number, Set<number>>();
  const note = (node: number, way: number): void => {
    const known = byEnd.get(node);
    if (known === undefined) byEnd.set(node, new Set([way]));
    else known.add(way);
  };
  const drop = (way: number): void => {
    const list = ways[way]!;
    byEnd.get(list[0]!)?.delete(way);
    byEnd.get(list.at(-1)!)?.delete(way);
    used.add(way);
  };
  const used = new Set<number>();
  for (const [k, way] of ways.entries()) {
    if (way.length < 2) return null;
    note(way[0]!, k);
    note(way.at(-1)!, k);
  }
  for (const [k, way] of ways.entries()) {
    if (used.has(k)) continue;
    const ring = [...way];
    drop(k);
    while (ring[0] !== ring.at(-1)) {
      const [next] = byEnd.get(ring.at(-1)!) ?? [];
      if (next === undefined) return null;
      const more = ways[next]!;
      drop(next);
      const forward = more[0] === ring.at(-1);
      for (let i = 1; i < more.length; i++) ring.push(more[forward ? i : more.length - 1 - i]!);
    }
    if (ring.length < 4) return null;
    rings.push(ring);
  }
  return rings;
}
