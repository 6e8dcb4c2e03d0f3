import type { MedialGraph } from './medial.ts';

/**
 * A run of the medial axis between two ends or forks. `slots[k]` is the graph's slot that leads from `nodes[k]` to
 * `nodes[k + 1]`. A ring without forks begins and ends at the same node.
 */
export interface Branch {
  readonly nodes: readonly number[];
  readonly slots: readonly number[];
}

/** How far a branch's last disc must reach beyond the disc of its fork, in radii of the fork, to be more than a bulge of the outline. */
const BULGE = 0.3;

/** The branches of what is alive. A lone node is a branch without slots. */
export function branchesOf(graph: MedialGraph, alive: Uint8Array): Branch[] {
  const branches: Branch[] = [];
  const used = new Uint8Array(graph.neighbours.length);
  const begin = (wanted: (degree: number) => boolean) => {
    for (let node = 0; node < alive.length; node++) {
      const open = alive[node] ? openSlots(graph, alive, node) : undefined;
      if (open === undefined || !wanted(open.length)) continue;
      if (open.length === 0) branches.push({ nodes: [node], slots: [] });
      for (const slot of open) if (!used[slot]) branches.push(follow(graph, alive, slot, used));
    }
  };
  begin((degree) => degree !== 2);
  begin((degree) => degree === 2);
  return branches;
}

/** The branch that begins with a slot, up to the next end or fork, or round to its start. */
function follow(graph: MedialGraph, alive: Uint8Array, first: number, used: Uint8Array): Branch {
  const start = Math.floor(first / 3);
  const [nodes, slots] = [[start], [] as number[]];
  for (let slot: number | undefined = first; slot !== undefined; ) {
    const node: number = graph.neighbours[slot]!;
    const back = twin(graph, slot);
    used[slot] = used[back] = 1;
    nodes.push(node);
    slots.push(slot);
    const open = openSlots(graph, alive, node);
    slot = open.length === 2 && node !== start ? open.find((other) => other !== back) : undefined;
  }
  return { nodes, slots };
}

/** The slot that leads back across the same side. */
function twin({ neighbours, left, right }: MedialGraph, slot: number): number {
  const [from, to] = [Math.floor(slot / 3), neighbours[slot]!];
  return [3 * to, 3 * to + 1, 3 * to + 2].find((other) => neighbours[other] === from && right[other] === left[slot])!;
}

/** Slots that lead from a node to living neighbours. */
export function openSlots({ neighbours }: MedialGraph, alive: Uint8Array, node: number): number[] {
  const open: number[] = [];
  for (let slot = 3 * node; slot < 3 * node + 3; slot++) if (neighbours[slot]! >= 0 && alive[neighbours[slot]!] === 1) open.push(slot);
  return open;
}

/** Takes off, all at once, the branches that end in a mere bulge of the outline: their last disc hardly leaves the disc of the fork. */
export function dropBulges(graph: MedialGraph, alive: Uint8Array): Uint8Array {
  const left = alive.slice();
  for (const { nodes } of branchesOf(graph, alive)) {
    const ends = [nodes[0]!, nodes.at(-1)!];
    const degrees = ends.map((node) => openSlots(graph, alive, node).length);
    const tip = degrees.indexOf(1);
    if (tip < 0 || degrees[1 - tip]! < 3) continue;
    if (isBulge(graph, ends[tip]!, ends[1 - tip]!)) for (const node of nodes) if (node !== ends[1 - tip]) left[node] = 0;
  }
  return left;
}

function isBulge({ x, y, radius }: MedialGraph, tip: number, fork: number): boolean {
  const apart = Math.hypot(x[tip]! - x[fork]!, y[tip]! - y[fork]!);
  return apart + radius[tip]! - radius[fork]! < BULGE * radius[fork]!;
}
