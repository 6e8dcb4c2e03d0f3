import { type Loop, makeRegionIndex, type Point, type Region } from '../geometry/index.ts';

/**
 * A region's boundary as points close together, loop after loop. `next` and `previous` lead around the loop with the inside
 * on the left; `along` is the length from the loop's first point, mm.
 */
export interface Boundary {
  /** x and y of every point in turn. */
  readonly places: Float64Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly loop: Int32Array;
  readonly along: Float64Array;
  /** Length of each loop, mm. */
  readonly lengths: readonly number[];
  /** For each point whether it is a vertex of the region, not one put between two. */
  readonly vertex: Uint8Array;
}

/** Where the region is narrow, neighbours are no farther apart than this share of its width there. */
const GRAIN = 1 / 5;

/** But never closer than this share of the step: a tip would take points without end. */
const FINEST = 1 / 64;

/**
 * The points of a region's loops with others put between them evenly, so that no two neighbours are more than `step` mm apart,
 * and closer where the region is narrow: a hairline is sampled as well as the broad stroke beside it.
 */
export function sampleBoundary(region: Region, step: number): Boundary {
  const { castRay } = makeRegionIndex(region);
  const across: Across = (from, to) => {
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    return castRay({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, { x: (from.y - to.y) / long, y: (to.x - from.x) / long });
  };
  return boundaryOf(region.loops.filter((loop) => loop.length > 2).map((loop) => subdivided(loop, step).flatMap((sample, i, all) => refined(sample, all[(i + 1) % all.length]!, step, across))));
}

/** How wide the region is inwards of the middle of a piece of its boundary, mm. */
type Across = (from: Point, to: Point) => number;

interface Sample extends Point {
  readonly vertex: boolean;
}

function subdivided(loop: Loop, step: number): Sample[] {
  return loop.flatMap((from, i) => {
    const to = loop[(i + 1) % loop.length]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step - 1e-9));
    return Array.from({ length: pieces }, (_, k): Sample => ({
      x: from.x + ((to.x - from.x) * k) / pieces, y: from.y + ((to.y - from.y) * k) / pieces, vertex: k === 0,
    }));
  });
}

/** A piece's first point, with others up to its second where the piece is long for the width there. */
function refined(from: Sample, to: Point, step: number, across: Across): Sample[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  if (long <= FINEST * step || long <= GRAIN * across(from, to)) return [from];
  const middle: Sample = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, vertex: false };
  return [...refined(from, middle, step, across), ...refined(middle, to, step, across)];
}

function boundaryOf(loops: readonly (readonly Sample[])[]): Boundary {
  const count = loops.reduce((sum, { length }) => sum + length, 0);
  const boundary = {
    places: new Float64Array(2 * count), next: new Int32Array(count), previous: new Int32Array(count),
    loop: new Int32Array(count), along: new Float64Array(count), lengths: [] as number[], vertex: new Uint8Array(count),
  };
  let first = 0;
  loops.forEach((samples, loop) => {
    boundary.lengths.push(fill(boundary, samples, loop, first));
    first += samples.length;
  });
  return boundary;
}

/** Enters one loop from index `first` on; gives its length. */
function fill(boundary: Boundary, samples: readonly Sample[], loop: number, first: number): number {
  let along = 0;
  samples.forEach(({ x, y, vertex }, k) => {
    const [i, after] = [first + k, samples[(k + 1) % samples.length]!];
    boundary.places.set([x, y], 2 * i);
    boundary.next[i] = first + ((k + 1) % samples.length);
    boundary.previous[i] = first + ((k + samples.length - 1) % samples.length);
    boundary.loop[i] = loop;
    boundary.along[i] = along;
    boundary.vertex[i] = vertex ? 1 : 0;
    along += Math.hypot(after.x - x, after.y - y);
  });
  return along;
}

/** The boundary with a point halfway between each listed point and its next one. */
export function halve({ places, next, loop, lengths, vertex }: Boundary, after: ReadonlySet<number>): Boundary {
  const loops: Sample[][] = lengths.map(() => []);
  for (let i = 0; i < next.length; i++) {
    const [x, y, j] = [places[2 * i]!, places[2 * i + 1]!, next[i]!];
    loops[loop[i]!]!.push({ x, y, vertex: vertex[i] === 1 });
    if (after.has(i)) loops[loop[i]!]!.push({ x: (x + places[2 * j]!) / 2, y: (y + places[2 * j + 1]!) / 2, vertex: false });
  }
  return boundaryOf(loops);
}

/** Length of the shorter way along the boundary between two points, mm; Infinity between loops. */
export function wayBetween({ loop, along, lengths }: Boundary, a: number, b: number): number {
  if (loop[a] !== loop[b]) return Infinity;
  const direct = Math.abs(along[a]! - along[b]!);
  return Math.min(direct, lengths[loop[a]!]! - direct);
}

/** How much longer that way is than the straight one, mm: the chord residue of an axis between two walls (Ogniewicz and Kübler 1995). */
export function residueBetween(boundary: Boundary, a: number, b: number): number {
  const { places } = boundary;
  return wayBetween(boundary, a, b) - Math.hypot(places[2 * a]! - places[2 * b]!, places[2 * a + 1]! - places[2 * b + 1]!);
}

/** The boundary's places by length along their loops. */
export interface Walk {
  /** Index of the first point of each loop; one more for the end. */
  readonly first: readonly number[];
  /** The place a signed length further along the loop from a point. */
  readonly from: (index: number, way: number) => Point;
  /** The point nearest before that place. */
  readonly indexFrom: (index: number, way: number) => number;
  /** Signed length from point a on to point b of the same loop, the shorter way round. */
  readonly way: (a: number, b: number) => number;
}

/** Makes walking along a boundary quick: any length in logarithmic time. */
export function walkOf({ places, next, loop, along, lengths }: Boundary): Walk {
  const first: number[] = lengths.map(() => -1);
  for (let i = next.length - 1; i >= 0; i--) first[loop[i]!] = i;
  first.push(next.length);
  const wrapped = (which: number, value: number) => value - lengths[which]! * Math.floor(value / lengths[which]!);
  const indexAt = (which: number, target: number) => {
    let [low, high] = [first[which]!, first[which + 1]!];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (along[middle]! <= target) low = middle;
      else high = middle;
    }
    return low;
  };
  const targetFrom = (index: number, way: number) => wrapped(loop[index]!, along[index]! + way);
  const from = (index: number, way: number): Point => {
    const target = targetFrom(index, way);
    const i = indexAt(loop[index]!, target);
    const j = next[i]!;
    const [x, y] = [places[2 * i]!, places[2 * i + 1]!];
    const [dx, dy] = [places[2 * j]! - x, places[2 * j + 1]! - y];
    const t = (target - along[i]!) / (Math.hypot(dx, dy) || 1);
    return { x: x + dx * t, y: y + dy * t };
  };
  const way = (a: number, b: number) => {
    const [whole, ahead] = [lengths[loop[a]!]!, along[b]! - along[a]!];
    return ahead - whole * Math.round(ahead / whole);
  };
  return { first, from, indexFrom: (index, by) => indexAt(loop[index]!, targetFrom(index, by)), way };
}
