import Delaunator from 'delaunator';
import { makeRegionIndex, type Point } from '../geometry/index.ts';
import { type Boundary, halve } from './boundary.ts';

/**
 * The medial axis of a region, as the part of the Voronoi diagram of its boundary's points that lies inside. A node is the
 * centre of a largest disc through three boundary points; an edge's discs touch the same two. `edges` lists, node by node,
 * three slots: the neighbour across each side of the node's triangle, -1 where there is none or it was pruned.
 * Brandt and Algazi, CVGIP 55 (1992): converges to the axis as the points come closer.
 */
export interface MedialGraph {
  readonly boundary: Boundary;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly radius: Float64Array;
  readonly neighbours: Int32Array;
  /** The two boundary points of the slot's edge: seen from the node outward, the one on the right and the one on the left. */
  readonly right: Int32Array;
  readonly left: Int32Array;
}

/** Rounds of halving boundary edges that the triangulation lacks; each round halves what is still missing. */
const MOST_ROUNDS = 12;

/** Halving is given up beyond so many times the points: edges that lie on one another would ask for it without end. */
const MOST_GROWTH = 8;

/** The medial graph of the region inside a boundary. It has at most `4 * MOST_GROWTH` nodes for each of its points. */
export function medialGraph(given: Boundary): MedialGraph {
  let boundary = given;
  let triangulation = new Delaunator(boundary.places);
  let missing = missingEdges(boundary, triangulation);
  for (let round = 0; round < MOST_ROUNDS && boundary.next.length < MOST_GROWTH * given.next.length; round++) {
    const long = apart(boundary, triangulation, missing);
    if (long.size === 0) break;
    boundary = halve(boundary, long);
    triangulation = new Delaunator(boundary.places);
    missing = missingEdges(boundary, triangulation);
  }
  return graphOf(boundary, triangulation, missing.size === 0 ? insideTriangles(boundary, triangulation) : coveredTriangles(boundary, triangulation));
}

type Triangulation = Pick<Delaunator<Float64Array>, 'triangles' | 'halfedges'>;

const nextCorner = (corner: number) => (corner % 3 === 2 ? corner - 2 : corner + 1);

/** Boundary edges, by their first point, that no triangle has as a side. */
function missingEdges({ next }: Boundary, { triangles }: Triangulation): Set<number> {
  const missing = new Set(next.keys());
  for (let corner = 0; corner < triangles.length; corner++) {
    const [a, b] = [triangles[corner]!, triangles[nextCorner(corner)]!];
    if (next[a] === b) missing.delete(a);
    if (next[b] === a) missing.delete(b);
  }
  return missing;
}

/** Those of some edges whose ends are both corners of triangles. A point that coincides with another is none, however often its edges are halved. */
function apart({ next }: Boundary, { triangles }: Triangulation, edges: ReadonlySet<number>): Set<number> {
  const corners = new Uint8Array(next.length);
  for (const corner of triangles) corners[corner] = 1;
  return new Set([...edges].filter((edge) => corners[edge] === 1 && corners[next[edge]!] === 1));
}

/** Which triangles have their middle inside the boundary's loops: slower than to follow the boundary, but no gap in it lets anything through. */
function coveredTriangles({ places, loop, lengths }: Boundary, { triangles }: Triangulation): Uint8Array {
  const loops = lengths.map((): Point[] => []);
  loop.forEach((which, i) => loops[which]!.push({ x: places[2 * i]!, y: places[2 * i + 1]! }));
  const { contains } = makeRegionIndex({ loops });
  const mean = (corner: number, axis: 0 | 1) => (places[2 * triangles[corner]! + axis]! + places[2 * triangles[corner + 1]! + axis]! + places[2 * triangles[corner + 2]! + axis]!) / 3;
  return Uint8Array.from({ length: triangles.length / 3 }, (_, t) => (contains({ x: mean(3 * t, 0), y: mean(3 * t, 1) }) ? 1 : 0));
}

/** Which triangles lie inside: those left of a boundary edge, and all that can be reached from them without crossing one. */
function insideTriangles(boundary: Boundary, { triangles, halfedges }: Triangulation): Uint8Array {
  const { next, previous } = boundary;
  const inside = new Uint8Array(triangles.length / 3);
  const queue: number[] = [];
  const enter = (triangle: number) => {
    if (inside[triangle]) return;
    inside[triangle] = 1;
    queue.push(triangle);
  };
  const turn = turnOf(boundary, triangles);
  for (let corner = 0; corner < triangles.length; corner++) {
    const [a, b] = [triangles[corner]!, triangles[nextCorner(corner)]!];
    if (turn > 0 ? next[a] === b : previous[a] === b) enter(Math.floor(corner / 3));
  }
  for (let triangle = queue.pop(); triangle !== undefined; triangle = queue.pop()) {
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      const [a, b, twin] = [triangles[corner]!, triangles[nextCorner(corner)]!, halfedges[corner]!];
      if (twin >= 0 && next[a] !== b && next[b] !== a) enter(Math.floor(twin / 3));
    }
  }
  return inside;
}

/** Positive when the triangulation's triangles run counter-clockwise. */
function turnOf({ places }: Boundary, triangles: Triangulation['triangles']): number {
  let sum = 0;
  for (let k = 0; k < triangles.length && sum === 0; k += 3) {
    const [a, b, c] = [2 * triangles[k]!, 2 * triangles[k + 1]!, 2 * triangles[k + 2]!];
    sum = (places[b]! - places[a]!) * (places[c + 1]! - places[a + 1]!) - (places[b + 1]! - places[a + 1]!) * (places[c]! - places[a]!);
  }
  return sum;
}

function graphOf(boundary: Boundary, { triangles, halfedges }: Triangulation, inside: Uint8Array): MedialGraph {
  const numbers = new Int32Array(inside.length).fill(-1);
  let count = 0;
  for (let t = 0; t < inside.length; t++) if (inside[t]) numbers[t] = count++;
  const graph = {
    boundary, x: new Float64Array(count), y: new Float64Array(count), radius: new Float64Array(count),
    neighbours: new Int32Array(3 * count).fill(-1), right: new Int32Array(3 * count), left: new Int32Array(3 * count),
  };
  const turnsLeft = turnOf(boundary, triangles) > 0;
  for (let t = 0; t < inside.length; t++) if (inside[t]) enterNode(graph, { t, numbers, triangles, halfedges, turnsLeft });
  return graph;
}

interface Triangle extends Triangulation {
  readonly t: number;
  readonly numbers: Int32Array;
  readonly turnsLeft: boolean;
}

/** Enters one triangle's circle and what lies across its sides. */
function enterNode(graph: MedialGraph, { t, numbers, triangles, halfedges, turnsLeft }: Triangle): void {
  const { places, next } = graph.boundary;
  const node = numbers[t]!;
  for (let side = 0; side < 3; side++) {
    const corner = 3 * t + side;
    const [a, b, twin] = [triangles[corner]!, triangles[nextCorner(corner)]!, halfedges[corner]!];
    const open = twin >= 0 && next[a] !== b && next[b] !== a;
    graph.neighbours[3 * node + side] = open ? numbers[Math.floor(twin / 3)]! : -1;
    graph.right[3 * node + side] = turnsLeft ? a : b;
    graph.left[3 * node + side] = turnsLeft ? b : a;
  }
  const [a, b, c] = [2 * triangles[3 * t]!, 2 * triangles[3 * t + 1]!, 2 * triangles[3 * t + 2]!];
  const [ux, uy] = [places[b]! - places[a]!, places[b + 1]! - places[a + 1]!];
  const [vx, vy] = [places[c]! - places[a]!, places[c + 1]! - places[a + 1]!];
  const [u, v, twice] = [ux * ux + uy * uy, vx * vx + vy * vy, 2 * (ux * vy - uy * vx)];
  const [dx, dy] = twice === 0 ? [(ux + vx) / 3, (uy + vy) / 3] : [(vy * u - uy * v) / twice, (ux * v - vx * u) / twice];
  graph.x[node] = places[a]! + dx;
  graph.y[node] = places[a + 1]! + dy;
  graph.radius[node] = Math.hypot(dx, dy);
}
