import Delaunator from 'delaunator';
import { type Boundary, halve, wayBetween } from './boundary.ts';

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
  /** The two boundary points of the slot's edge: seen from the node, first the right one, then the left one. */
  readonly right: Int32Array;
  readonly left: Int32Array;
}

/** Rounds of halving boundary edges that the triangulation lacks; each round halves what is still missing. */
const MOST_ROUNDS = 12;

/** The medial graph of the region inside a boundary. */
export function medialGraph(given: Boundary): MedialGraph {
  let boundary = given;
  let triangulation = new Delaunator(boundary.places);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const missing = missingEdges(boundary, triangulation);
    if (missing.size === 0) break;
    boundary = halve(boundary, missing);
    triangulation = new Delaunator(boundary.places);
  }
  return graphOf(boundary, triangulation, insideTriangles(boundary, triangulation));
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
