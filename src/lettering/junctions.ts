import type { Point } from '../geometry/index.ts';
import { type ArmView, viewArm } from './arm.ts';
import { type Crotch, crotchBetween, isSmooth, type Shore } from './crotch.ts';
import type { MedialGraph } from './medial.ts';
import { bestMatching, type Matching } from './pairing.ts';
import type { Branch } from './skeleton.ts';
import { reverseTrack, type Track, trackLength } from './track.ts';

/** One end of a branch at a junction: the branch's number, and whether the track had to be turned to lead outward. */
export interface Arm {
  readonly branch: number;
  readonly turned: boolean;
  readonly track: Track;
}

/** Forks of the axis taken for one junction, its arms counter-clockwise, the crotch that follows each, and how they pair. */
export interface Knot {
  readonly forks: readonly number[];
  readonly bridges: readonly number[];
  readonly at: Point;
  readonly radius: number;
  readonly arms: readonly Arm[];
  readonly views: readonly ArmView[];
  readonly crotches: readonly Crotch[];
  readonly matching: Matching;
}

/** A bridge shorter than this many radii of its forks' discs never stands alone. */
const SHORT_BRIDGE = 0.75;

/** Nor can one longer than this many be a crossing: strokes that cross under 8 degrees. */
const LONG_BRIDGE = 14;

interface Net {
  readonly graph: MedialGraph;
  readonly shore: Shore;
  readonly branches: readonly Branch[];
  readonly tracks: readonly Track[];
  /** Forks by node: the branch ends there. */
  readonly ends: ReadonlyMap<number, readonly Arm[]>;
}

/** All junctions of a component's branches. */
export function knotsOf(graph: MedialGraph, shore: Shore, branches: readonly Branch[], tracks: readonly Track[]): Knot[] {
  const net: Net = { graph, shore, branches, tracks, ends: endsOf(branches, tracks) };
  let groups = mergedGroups(net, [...net.ends.keys()].map((fork) => [fork]));
  const knots = new Map(groups.map((group) => [group, knotOf(net, group)]));
  for (const bridge of bridgesByLength(net)) {
    const [a, b] = endsOfBranch(branches[bridge]!).map((node) => groups.find((group) => group.includes(node))!) as [readonly number[], readonly number[]];
    if (a === b) continue;
    const together = knotOf(net, [...a, ...b]);
    if (together.arms.length > 8 || !isCrossing(together, [knots.get(a)!, knots.get(b)!], trackLength(tracks[bridge]!))) continue;
    groups = [...groups.filter((group) => group !== a && group !== b), together.forks];
    knots.set(together.forks, together);
  }
  return groups.map((group) => knots.get(group)!);
}

const endsOfBranch = ({ nodes }: Branch): readonly [number, number] => [nodes[0]!, nodes.at(-1)!];

function endsOf(branches: readonly Branch[], tracks: readonly Track[]): Map<number, Arm[]> {
  const ends = new Map<number, Arm[]>();
  const enter = (node: number, arm: Arm) => void ends.set(node, [...(ends.get(node) ?? []), arm]);
  branches.forEach((branch, number) => {
    if (branch.slots.length === 0) return;
    const [first, last] = endsOfBranch(branch);
    enter(first, { branch: number, turned: false, track: tracks[number]! });
    enter(last, { branch: number, turned: true, track: reverseTrack(tracks[number]!) });
  });
  for (const [node, arms] of ends) if (arms.length < 3) ends.delete(node);
  return ends;
}

/** Forks joined by bridges too short to be anything else. */
function mergedGroups(net: Net, start: readonly (readonly number[])[]): (readonly number[])[] {
  let groups = [...start];
  for (const bridge of bridgesByLength(net)) {
    const [a, b] = endsOfBranch(net.branches[bridge]!);
    const mean = (net.graph.radius[a]! + net.graph.radius[b]!) / 2;
    const [one, two] = [groups.find((group) => group.includes(a))!, groups.find((group) => group.includes(b))!];
    if (one === two || trackLength(net.tracks[bridge]!) >= SHORT_BRIDGE * mean) continue;
    groups = [...groups.filter((group) => group !== one && group !== two), [...one, ...two]];
  }
  return groups;
}

/** Branches between two different forks, short ones first, none too long. */
function bridgesByLength({ branches, tracks, ends, graph }: Net): number[] {
  return branches.map((branch, number) => ({ number, nodes: endsOfBranch(branch), length: trackLength(tracks[number]!) }))
    .filter(({ nodes: [a, b], length }) => a !== b && ends.has(a) && ends.has(b) && length < LONG_BRIDGE * Math.max(graph.radius[a]!, graph.radius[b]!))
    .sort((a, b) => a.length - b.length).map(({ number }) => number);
}

/** Whether two junctions and the bridge between them are one crossing: the arms then pair more easily than in two junctions. */
function isCrossing(together: Knot, apart: readonly [Knot, Knot], bridge: number): boolean {
  const { matching, views, arms } = together;
  if (arms.length < 4 || matching.pairs.length === 0) return false;
  const cheaper = matching.cost < apart[0].matching.cost + apart[1].matching.cost;
  const widest = Math.max(...views.map(({ width }) => width));
  return cheaper && bridge < 1.5 * expectedOverlap(together) + widest;
}

/** How long the widest pair of crossing strokes overlap: their width by the sine of the angle between them. */
function expectedOverlap({ matching, views }: Knot): number {
  const directions = matching.pairs.map(([a, b]) => Math.atan2(views[b]!.point.y - views[a]!.point.y, views[b]!.point.x - views[a]!.point.x));
  const width = views.reduce((sum, view) => sum + view.width, 0) / views.length;
  if (directions.length < 2) return 0;
  const sine = Math.abs(Math.sin(directions[0]! - directions[1]!));
  return width / Math.max(sine, 0.1);
}

function knotOf(net: Net, forks: readonly number[]): Knot {
  const { graph, branches, ends, shore } = net;
  const inside = new Set(forks);
  const all = forks.flatMap((fork) => ends.get(fork)!);
  const mean = forks.reduce((sum, fork) => sum + graph.radius[fork]!, 0) / forks.length;
  const isBridge = ({ branch }: Arm) => {
    const [a, b] = endsOfBranch(branches[branch]!);
    return a !== b && inside.has(a) && inside.has(b) && trackLength(net.tracks[branch]!) < LONG_BRIDGE * mean;
  };
  const bridges = [...new Set(all.filter(isBridge).map(({ branch }) => branch))];
  const arms = inOrder(shore, all.filter((arm) => !isBridge(arm)));
  const width = 2 * Math.min(...arms.map(({ track }) => track.radius[track.radius.length >> 1]!));
  const crotches = arms.map((arm, k) => crotchBetween(shore, arm.track.left[0]!, arms[(k + 1) % arms.length]!.track.right[0]!, Math.min(width, 2 * mean)));
  const views = arms.map((arm, k) => viewArm(shore, arm.track, crotches[k]!, crotches.at(k - 1)!));
  const at = { x: forks.reduce((sum, f) => sum + graph.x[f]!, 0) / forks.length, y: forks.reduce((sum, f) => sum + graph.y[f]!, 0) / forks.length };
  const matching = bestMatching(views, (a, b) => (b - a + arms.length) % arms.length === 1 && isSmooth(crotches[a]!)
    || (a - b + arms.length) % arms.length === 1 && isSmooth(crotches[b]!));
  return { forks, bridges, at, radius: Math.max(...forks.map((fork) => graph.radius[fork]!)), arms, views, crotches, matching };
}

/** Arms counter-clockwise: from each, on along the boundary from its left wall, the next one whose right wall is met. */
function inOrder({ boundary }: Shore, arms: readonly Arm[]): Arm[] {
  const rest = new Set(arms);
  const order: Arm[] = [];
  for (let arm: Arm | undefined = arms[0]; arm !== undefined; ) {
    order.push(arm);
    rest.delete(arm);
    const here: Arm = arm;
    arm = [...rest].map((other) => ({ other, gap: gapBetween(boundary, here.track.left[0]!, other.track.right[0]!) }))
      .sort((a, b) => a.gap - b.gap)[0]?.other;
  }
  return order;
}

function gapBetween({ loop, along, lengths }: Shore['boundary'], a: number, b: number): number {
  if (loop[a] !== loop[b]) return Infinity;
  const ahead = along[b]! - along[a]!;
  const whole = lengths[loop[a]!]!;
  // A hair behind counts as ahead: both may be the same crotch.
  return ahead < -0.02 * whole ? ahead + whole : Math.abs(ahead);
}

