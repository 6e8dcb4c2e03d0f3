import { residueBetween } from './boundary.ts';
import type { MedialGraph } from './medial.ts';

/**
 * A leaf goes while its chord residue (shorter way along the boundary between the two points its disc touches, less the
 * straight way: Ogniewicz and Kübler 1995) is under this share of its radius. A square corner reaches 0.59, a round cap 1.14.
 */
export const RESIDUE = 1;

/** Which nodes stay when what only mirrors the boundary's small corners is peeled off, leaf by leaf, so that nothing comes apart. One node at least. */
export function peel(graph: MedialGraph): Uint8Array {
  const { neighbours, radius } = graph;
  const alive = new Uint8Array(radius.length).fill(1);
  const degree = Uint8Array.from(radius, (_, node) => [0, 1, 2].filter((side) => neighbours[3 * node + side]! >= 0).length);
  const leaves = [...radius.keys()].filter((node) => degree[node] === 1);
  for (let leaf = leaves.pop(); leaf !== undefined; leaf = leaves.pop()) {
    const slot = [0, 1, 2].map((side) => 3 * leaf! + side).find((at) => neighbours[at]! >= 0 && alive[neighbours[at]!] === 1);
    if (slot === undefined || residue(graph, slot) >= RESIDUE * radius[leaf]!) continue;
    alive[leaf] = 0;
    const after = neighbours[slot]!;
    degree[after]!--;
    if (degree[after] === 1) leaves.push(after);
  }
  return alive;
}

/** The chord residue across an edge, mm. */
export const residue = ({ boundary, right, left }: MedialGraph, slot: number): number => residueBetween(boundary, right[slot]!, left[slot]!);
