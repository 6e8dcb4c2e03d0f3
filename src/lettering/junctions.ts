import type { Point } from '../geometry/index.ts';
import { type ArmView, safeIndex, viewArm, viewStub } from './arm.ts';
import { residueBetween } from './boundary.ts';
import { crotchBetween, isSmooth, type Shore } from './crotch.ts';
import { growArm, type Grown, growPlain, halfOf, widensIn } from './grow.ts';
import type { MedialGraph } from './medial.ts';
import { bestMatching, type Candidate, type Matching } from './pairing.ts';
import { RESIDUE } from './peel.ts';
import type { Branch } from './skeleton.ts';
import { indexAlong, reverseTrack, type Track, trackLength } from './track.ts';

/** One end of a branch at a junction: the branch's number, and whether the track had to be turned to lead outward. */
export interface Arm {
  readonly branch: number;
  readonly turned: boolean;
  readonly track: Track;
  /** How far, radians, the outline turns at the corner that ends each wall, seen inwards. */
  readonly corners: { readonly left: number; readonly right: number };
  /** Index into the track, which leads outward, from which both walls are the arm's own. */
  readonly safe: number;
  /** Index from which its discs touch neither crotch: before `safe` where the arm widens into the junction. */
  readonly clear: number;
  readonly grown: Grown;
  /** The far end of an arm too short to show a course of its own. */
  readonly stub: Point | undefined;
  /** What was followed from `clear` on, should the arm's widening be the pen's own. */
  readonly plain: Grown | undefined;
}

type BareArm = Omit<Arm, 'grown' | 'safe' | 'clear' | 'corners' | 'stub' | 'plain'>;
type SafeArm = Omit<Arm, 'grown' | 'plain'>;

/** Forks of the axis taken for one junction, its arms counter-clockwise, and how they pair. */
export interface Knot {
  readonly forks: readonly number[];
  readonly bridges: readonly number[];
  readonly at: Point;
  /** Where arms that are no one's partner meet if no stroke runs through: nearest to all their lines. */
  readonly meeting: Point;
  readonly radius: number;
  readonly arms: readonly Arm[];
  readonly views: readonly ArmView[];
  readonly matching: Matching;
}

/** A bridge shorter than this many radii of its forks' discs never stands alone. */
const SHORT_BRIDGE = 0.75;

/** Nor can one longer than this many be a crossing: strokes that cross under 8 degrees. */
const LONG_BRIDGE = 18;

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
  const net: Net = { graph, shore, branches, tracks, ends: grownEnds(graph, shore, endsOf(branches, tracks)) };
  let groups = mergedGroups(net, [...net.ends.keys()].map((fork) => [fork]));
  const merged: number[] = [];
  const knots = new Map(groups.map((group) => [group, knotOf(net, group, merged)]));
  for (const bridge of bridgesByLength(net)) {
    const [a, b] = endsOfBranch(branches[bridge]!).map((node) => groups.find((group) => group.includes(node))!) as [readonly number[], readonly number[]];
    if (a === b) continue;
    const together = knotOf(net, [...a, ...b], [...merged, bridge]);
    if (together.arms.length > 8 || !isCrossing(together, [knots.get(a)!, knots.get(b)!], tracks[bridge]!)) continue;
    merged.push(bridge);
    groups = [...groups.filter((group) => group !== a && group !== b), together.forks];
    knots.set(together.forks, together);
  }
  return groups.map((group) => knots.get(group)!);
}

const endsOfBranch = ({ nodes }: Branch): readonly [number, number] => [nodes[0]!, nodes.at(-1)!];

function endsOf(branches: readonly Branch[], tracks: readonly Track[]): Map<number, BareArm[]> {
  const ends = new Map<number, BareArm[]>();
  const enter = (node: number, arm: BareArm) => void ends.set(node, [...(ends.get(node) ?? []), arm]);
  branches.forEach((branch, number) => {
    if (branch.slots.length === 0) return;
    const [first, last] = endsOfBranch(branch);
    enter(first, { branch: number, turned: false, track: tracks[number]! });
    enter(last, { branch: number, turned: true, track: reverseTrack(tracks[number]!) });
  });
  for (const [node, arms] of ends) if (arms.length < 3) ends.delete(node);
  return ends;
}

/** Each fork's arms with their safe places, then each arm followed inward. */
function grownEnds({ radius }: MedialGraph, shore: Shore, bare: ReadonlyMap<number, readonly BareArm[]>): Map<number, Arm[]> {
  const free = new Set([...bare].flatMap(([, arms]) => arms.map(({ branch }) => branch)).filter((branch, _, all) => all.filter((other) => other === branch).length === 1));
  const safe = new Map([...bare].map(([fork, arms]): [number, SafeArm[]] => [fork, safeArms(shore, arms, 2 * radius[fork]!, free)]));
  const owner = ownersOf(shore, [...safe.values()].flat());
  return new Map([...safe].map(([fork, arms]) => [fork, arms.map((arm) => grownArm({ shore, owner }, arm))]));
}

function grownArm(ground: Parameters<typeof growArm>[0], arm: SafeArm): Arm {
  if (arm.stub) return { ...arm, grown: NOTHING, plain: undefined };
  return { ...arm, grown: growArm(ground, arm), plain: widensIn(arm) ? growPlain(ground, arm) : undefined };
}

const NOTHING: Grown = { line: [], base: 0, reached: undefined, shed: undefined };

/** A free arm with less than this, in widths, of length clear of its junction is a stub. */
const STUB = 0.8;

function safeArms(shore: Shore, unordered: readonly BareArm[], widest: number, free: ReadonlySet<number>): SafeArm[] {
  const arms = inOrder(shore, unordered);
  const width = Math.min(widest, ...arms.map(({ track }) => 2 * track.radius[track.radius.length >> 1]!));
  const crotches = arms.map((arm, k) => crotchBetween(shore, arm.track.left[0]!, arms[(k + 1) % arms.length]!.track.right[0]!, width));
  return arms.map((arm, k) => {
    const [left, right] = [crotches[k]!, crotches.at(k - 1)!];
    const { safe: own, clear, narrows } = safeIndex(shore, arm.track, left, right);
    const { track } = arm;
    // What narrows all the way to a free end is a stroke that tapers: both walls are its own.
    const safe = narrows && free.has(arm.branch) && widensIn({ track, clear, safe: own }) ? clear : own;
    const short = free.has(arm.branch) && (trackLength(track) - track.along[safe]! < STUB * 2 * track.radius[safe]! || endsInCorner(shore, track));
    // The stroke that ends in a corner with another one swallowed is the one that keeps its wall: the arm across from the crotch.
    const beside = arms.at((left.turn < right.turn ? k + 1 : k - 1) % arms.length)!.track;
    return { ...arm, corners: { left: right.turn, right: left.turn }, safe, clear, stub: short ? stubEnd(shore, track, beside) : undefined };
  });
}

/** Whether a track was kept though its last disc only fills a corner. */
function endsInCorner({ boundary }: Shore, { left, right, radius }: Track): boolean {
  return residueBetween(boundary, left.at(-1)!, right.at(-1)!) < RESIDUE * radius.at(-1)!;
}

/** Where a stub ends: at its last disc; in a corner where a pen as wide as the arm beside it comes to rest. */
function stubEnd(shore: Shore, track: Track, beside: Track): Point {
  const half = beside.radius[beside.radius.length >> 1]!;
  const fits = endsInCorner(shore, track) ? track.radius.findIndex((radius) => radius <= half) : -1;
  return { x: track.x.at(fits)!, y: track.y.at(fits)! };
}

/** For each boundary point which half of which branch it is a wall of, clear of junctions; -1 for none. */
function ownersOf({ boundary }: Shore, arms: readonly SafeArm[]): Int32Array {
  const owner = new Int32Array(boundary.next.length).fill(-1);
  const until = new Map(arms.map(({ branch, turned, safe }) => [`${branch} ${turned}`, safe]));
  for (const { branch, turned, track, safe, stub } of arms) {
    if (stub) continue;
    // Each arm answers for its own half alone, should the other end be an arm too.
    const last = Math.min(track.x.length - 1 - (until.get(`${branch} ${!turned}`) ?? 0), track.x.length);
    for (let k = safe; k < last; k++) owner[track.left[k]!] = owner[track.right[k]!] = halfOf(branch, turned !== 2 * track.along[k]! > trackLength(track));
  }
  return owner;
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

/** A bridge is where two strokes run into one another if its disc is this much larger than the strokes' own, and no larger than both together. */
const [WIDER, BOTH] = [1.12, 1.08];

/** Whether two junctions and the bridge between them are one crossing: the arms then pair more easily than in two junctions. */
function isCrossing(together: Knot, apart: readonly [Knot, Knot], bridge: Track): boolean {
  const { matching, views, arms } = together;
  if (arms.length < 4 || matching.pairs.length === 0) return false;
  const cheaper = matching.cost < apart[0].matching.cost + apart[1].matching.cost;
  const widest = Math.max(...views.map(({ width }) => width));
  const disc = quarterRadius(bridge);
  const least = views.reduce((sum, { width }) => sum + width / 2, 0) / views.length;
  const short = trackLength(bridge) < widest;
  const alike = views.every((view, k) => arms[k]!.stub !== undefined || angleBetween(view.direction, bridge) < STEEPEST);
  return cheaper && (short || (alike && disc > WIDER * least && disc < BOTH * widest && trackLength(bridge) < 2.2 * expectedOverlap(together) + widest));
}

/** Strokes that run into one another over a length leave at no more than this from it, radians. */
const STEEPEST = 0.75;

/** Between a direction and a track's chord, radians, whichever way either runs. */
function angleBetween(direction: number, { x, y }: Track): number {
  const off = direction - Math.atan2(y.at(-1)! - y[0]!, x.at(-1)! - x[0]!);
  return Math.abs(off - Math.PI * Math.round(off / Math.PI));
}

/** Mean radius a quarter of the way from either end. */
function quarterRadius(track: Track): number {
  const at = (share: number) => track.radius[indexAlong(track, share * trackLength(track))]!;
  return (at(0.25) + at(0.75)) / 2;
}

/** About half the length over which two crossing strokes overlap: their width by the sine of the angle between them. */
function expectedOverlap({ matching, views }: Knot): number {
  const directions = matching.pairs.map(([a, b]) => Math.atan2(views[b]!.point.y - views[a]!.point.y, views[b]!.point.x - views[a]!.point.x));
  const width = views.reduce((sum, view) => sum + view.width, 0) / views.length;
  if (directions.length < 2) return 0;
  const sine = Math.abs(Math.sin(directions[0]! - directions[1]!));
  return width / Math.max(sine, 0.1);
}

/** The junction of some forks; `merged` lists the branches between them that made them one, however long. */
function knotOf(net: Net, forks: readonly number[], merged: readonly number[]): Knot {
  const { graph, branches, ends, shore } = net;
  const inside = new Set(forks);
  const all = forks.flatMap((fork) => ends.get(fork)!);
  const mean = forks.reduce((sum, fork) => sum + graph.radius[fork]!, 0) / forks.length;
  const isBridge = ({ branch }: Arm) => {
    const [a, b] = endsOfBranch(branches[branch]!);
    return a !== b && inside.has(a) && inside.has(b) && (merged.includes(branch) || trackLength(net.tracks[branch]!) < SHORT_BRIDGE * mean);
  };
  const bridges = [...new Set(all.filter(isBridge).map(({ branch }) => branch))];
  const at = { x: forks.reduce((sum, f) => sum + graph.x[f]!, 0) / forks.length, y: forks.reduce((sum, f) => sum + graph.y[f]!, 0) / forks.length };
  const seen = inOrder(shore, all.filter((arm) => !isBridge(arm)));
  const candidates = seen.map((arm) => candidateOf(arm, at));
  const matching = bestMatching(candidates, smoothNeighbours(shore, seen));
  const arms = seen.map((arm, k) => (matching.plain.includes(k) ? { ...arm, grown: arm.plain!, safe: arm.clear } : arm));
  const views = candidates.map(({ view, plain }, k) => (matching.plain.includes(k) ? plain! : view));
  const radius = Math.max(...forks.map((fork) => graph.radius[fork]!));
  return { forks, bridges, at, radius, meeting: meetingOf(views.filter((_, k) => !arms[k]!.stub), at, radius), arms, views, matching };
}

const candidateOf = ({ grown, plain, branch, stub, track }: Arm, at: Point): Candidate =>
  ({ view: stub ? viewStub(track, at) : viewArm(grown, at), plain: plain && plain.line.length > 3 ? viewArm(plain, at) : undefined, grown, branch, stub });

/** For each arm whether the wall runs on from it to the next one without a crotch. Told only where an arm widens: nothing else asks. */
function smoothNeighbours(shore: Shore, arms: readonly Arm[]): boolean[] {
  if (arms.every(({ plain }) => plain === undefined)) return arms.map(() => false);
  const width = 2 * Math.min(...arms.map(({ track, clear }) => track.radius[clear]!));
  return arms.map((arm, k) => isSmooth(crotchBetween(shore, arm.track.left[0]!, arms[(k + 1) % arms.length]!.track.right[0]!, width)));
}

/** The point nearest to the lines of some arms by least squares, drawn weakly to the middle and kept near it. */
function meetingOf(views: readonly ArmView[], middle: Point, radius: number): Point {
  let [xx, xy, yy, bx, by] = [0.05, 0, 0.05, 0, 0];
  for (const { point, direction } of views) {
    const [nx, ny] = [-Math.sin(direction), Math.cos(direction)];
    const off = nx * (point.x - middle.x) + ny * (point.y - middle.y);
    xx += nx * nx; xy += nx * ny; yy += ny * ny; bx += nx * off; by += ny * off;
  }
  const det = xx * yy - xy * xy;
  const [dx, dy] = [(bx * yy - by * xy) / det, (by * xx - bx * xy) / det];
  const shrink = Math.min(1, (1.5 * radius) / Math.hypot(dx, dy));
  return { x: middle.x + shrink * dx, y: middle.y + shrink * dy };
}

/** Arms counter-clockwise: from each, on along the boundary from its left wall, the next one whose right wall is met. */
function inOrder<A extends BareArm>({ boundary }: Shore, arms: readonly A[]): A[] {
  const rest = new Set(arms);
  const order: A[] = [];
  for (let arm: A | undefined = arms[0]; arm !== undefined; ) {
    order.push(arm);
    rest.delete(arm);
    const here: A = arm;
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

