import { crotchBetween, type Shore, SMOOTH_TURN } from './crotch.ts';
import type { Arm, Knot } from './junctions.ts';
import type { MedialGraph } from './medial.ts';
import { CLEAR } from './pairing.ts';
import { residue } from './peel.ts';
import { openSlots } from './skeleton.ts';

/**
 * A stroke that leaves another close to its end swallows one corner of that end. What is left of the end is a corner of the outline
 * beside a crotch, and the axis has a mere corner's spur there, which peeling takes off. These are such spurs, each as the nodes from the axis outward:
 * they are worth a fork if a stroke runs on into them.
 */
export function swallowedEnds(shore: Shore, graph: MedialGraph, alive: Uint8Array): number[][] {
  const found: number[][] = [];
  for (let node = 0; node < alive.length; node++) {
    if (!alive[node] || openSlots(graph, alive, node).length !== 2) continue;
    const slot = [0, 1, 2].map((side) => 3 * node + side).find((at) => graph.neighbours[at]! >= 0 && !alive[graph.neighbours[at]!]);
    if (slot !== undefined && isCorner(graph, slot) && isBesideCrotch(shore, graph, slot)) found.push(spurFrom(graph, slot));
  }
  return found;
}

/** A corner's spur has at least this residue, in radii of its discs: corners of up to about a right angle. A square one has 0.59. */
const SQUARE = 0.45;

const isCorner = (graph: MedialGraph, slot: number): boolean => residue(graph, slot) > SQUARE * graph.radius[Math.floor(slot / 3)]!;

/** A crotch turns by at least this much, radians. */
const TURN = 0.5;

/** Whether the outline turns inward where the spur's first disc touches it. */
function isBesideCrotch(shore: Shore, { left, right, radius }: MedialGraph, slot: number): boolean {
  const width = 2 * radius[Math.floor(slot / 3)]!;
  return [left[slot]!, right[slot]!].some((touched) => crotchBetween(shore, touched, touched, width).turn > TURN);
}

/** The nodes from a slot outward, each time across the side with most boundary beyond it, as long as that is a corner's. */
function spurFrom(graph: MedialGraph, slot: number): number[] {
  const nodes: number[] = [];
  const came = new Set([Math.floor(slot / 3)]);
  for (let at: number | undefined = slot; at !== undefined && isCorner(graph, at); ) {
    const node: number = graph.neighbours[at]!;
    nodes.push(node);
    came.add(node);
    at = [0, 1, 2].map((side) => 3 * node + side).filter((next) => graph.neighbours[next]! >= 0 && !came.has(graph.neighbours[next]!))
      .sort((a, b) => residue(graph, b) - residue(graph, a))[0];
  }
  return nodes;
}

/** Less margin than this leaves open whether a stroke ends there. */
const SURE = CLEAR / 2;

/**
 * The arms of a junction that are what is left of a swallowed end. There is one crotch alone: the stroke that ends has walls that leave
 * it without a corner, its own into the end and the other stroke's inner one, so that it widens into the junction.
 */
export function swallowedAt({ arms, matching }: Knot): Arm[] {
  if (arms.length !== 3 || matching.margin < SURE) return [];
  const isOneCrotch = ({ corners, plain }: Arm) => plain !== undefined && Math.max(corners.left, corners.right) < SMOOTH_TURN;
  return matching.pairs.flatMap(([a, b]) => [[arms[a]!, arms[b]!], [arms[b]!, arms[a]!]] as const).flatMap(([end, stroke]) => (end.stub && isOneCrotch(stroke) ? [end] : []));
}
