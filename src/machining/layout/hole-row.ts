import { type Loop, type Point, type Region, distance, lerp, makeRegionIndex, offsetRegion, outerContour } from '../../geometry/index.ts';
import type { Pattern } from './hole-pattern.ts';

/** How many holes a row along the outline gets, and where they begin. */
export interface RowSpacing {
  /** Whether its four corners get holes first, and the others are spread evenly between them. */
  readonly corners: boolean;
  /** Greatest distance between two holes along the line, mm; or how many holes there are in all. */
  readonly holes: { readonly pitch: number } | { readonly count: number };
}

export interface RowOptions extends RowSpacing {
  /** From the board's edge to the line that the holes stand on, mm. */
  readonly edgeDistance: number;
  /** Least distance between the centres of two holes, mm. */
  readonly apart: number;
  /** How far along the line a hole may move to find a clear place, mm. */
  readonly reach: number;
}

/**
 * Places along the board's outer outline, `edgeDistance` inside it. A place that is not clear, or nearer than `apart` to one before it, moves
 * along the line to the nearest that is, found to a millimetre; where none is within reach the hole is given up. Corners choose first.
 */
export function placesAlongOutline(board: Region, clear: Region, options: RowOptions): Pattern {
  const lines = insetLines(board, options.edgeDistance);
  const { contains } = makeRegionIndex(clear);
  const taken: Place[] = [], unclear: Point[] = [];
  for (const wanted of wantedPlaces(lines, options)) {
    const place = nearestFree(wanted, options.reach, (point) => contains(point) && taken.every((other) => distance(other.point, point) >= options.apart));
    if (place) taken.push(place);
    else unclear.push(pointAt(wanted.line, wanted.along));
  }
  return { centres: taken.sort((a, b) => lines.indexOf(a.line) - lines.indexOf(b.line) || a.along - b.along).map(({ point }) => point), unclear };
}

/** The line of places runs this much inside the clear area's own boundary, so that chords of either do not decide. */
const HAIR = 0.02;

/** Steps in which a hole looks for a clear place, mm. */
const STEP = 1;

/** A closed line with the distance of each vertex from its start. */
interface Line {
  readonly loop: Loop;
  readonly reached: readonly number[];
  readonly length: number;
}

interface Wanted {
  readonly line: Line;
  /** Distance along the line from its start, mm. */
  readonly along: number;
}

interface Place extends Wanted {
  readonly point: Point;
}

/** A stretch of a line between two corners, or all of it, and how many holes stand within. */
interface Gap {
  readonly line: Line;
  readonly from: number;
  readonly length: number;
  /** All of a line: the first hole stands at its start. */
  readonly whole: boolean;
  count: number;
}

function insetLines(board: Region, edgeDistance: number): Line[] {
  const { loops } = offsetRegion(outerContour(board), -(edgeDistance + HAIR), { join: 'round', miterLimit: 2, tolerance: 0.01 });
  return loops.map(fromLowerLeft).map((loop) => {
    const reached = [0];
    loop.forEach((point, i) => reached.push(reached[i]! + distance(point, loop[(i + 1) % loop.length]!)));
    return { loop, reached: reached.slice(0, -1), length: reached.at(-1)! };
  });
}

/** The loop begun at its place farthest towards the lower left, where people begin to count. */
function fromLowerLeft(loop: Loop): Loop {
  const sums = loop.map(({ x, y }) => x + y);
  const start = sums.indexOf(Math.min(...sums));
  return [...loop.slice(start), ...loop.slice(0, start)];
}

function pointAt({ loop, reached, length }: Line, along: number): Point {
  const at = ((along % length) + length) % length;
  let low = 0, high = loop.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (reached[middle]! <= at) low = middle;
    else high = middle;
  }
  const from = loop[low]!, to = loop[(low + 1) % loop.length]!;
  const edge = distance(from, to);
  return edge === 0 ? from : lerp(from, to, (at - reached[low]!) / edge);
}

function wantedPlaces(lines: readonly Line[], { corners, holes, apart }: RowOptions): Wanted[] {
  const first = corners && lines.length > 0 ? cornersOf(lines, apart) : [];
  const gaps = lines.flatMap((line) => gapsOf(line, first));
  if ('pitch' in holes) for (const gap of gaps) gap.count = Math.ceil(gap.length / holes.pitch - 1e-9) - (gap.whole ? 0 : 1);
  else for (let left = holes.count - first.length; left > 0 && gaps.length > 0; left--) widest(gaps).count++;
  return [...first, ...gaps.flatMap(placesIn)];
}

/** The places farthest towards the four corners; one where two fall together. */
function cornersOf(lines: readonly Line[], apart: number): Wanted[] {
  const vertices = lines.flatMap((line) => line.loop.map((point, i) => ({ line, along: line.reached[i]!, point })));
  const farthest = ([[-1, -1], [1, -1], [1, 1], [-1, 1]] as const).map(([right, up]) =>
    vertices.reduce((a, b) => ((b.point.x - a.point.x) * right + (b.point.y - a.point.y) * up > 0 ? b : a)));
  return farthest.filter(({ point }, i) => farthest.slice(0, i).every((earlier) => distance(earlier.point, point) >= apart));
}

function gapsOf(line: Line, corners: readonly Wanted[]): Gap[] {
  const ends = corners.filter((corner) => corner.line === line).map(({ along }) => along).sort((a, b) => a - b);
  if (ends.length === 0) return [{ line, from: 0, length: line.length, whole: true, count: 0 }];
  return ends.map((from, i) => ({ line, from, length: (ends[i + 1] ?? ends[0]! + line.length) - from, whole: false, count: 0 }));
}

/** From hole to hole in a gap, mm. */
const spacingIn = ({ length, whole, count }: Gap): number => (whole && count === 0 ? Infinity : length / (count + (whole ? 0 : 1)));

const widest = (gaps: readonly Gap[]): Gap => gaps.reduce((a, b) => (spacingIn(b) > spacingIn(a) ? b : a));

function placesIn(gap: Gap): Wanted[] {
  const spacing = spacingIn(gap);
  return Array.from({ length: gap.count }, (_, i) => ({ line: gap.line, along: gap.from + spacing * (gap.whole ? i : i + 1) }));
}

function nearestFree({ line, along }: Wanted, reach: number, free: (point: Point) => boolean): Place | undefined {
  for (let away = 0; away <= Math.min(reach, line.length / 2); away += STEP)
    for (const side of [1, -1]) {
      const at = along + side * away;
      const point = pointAt(line, at);
      if (free(point)) return { line, along: ((at % line.length) + line.length) % line.length, point };
    }
  return undefined;
}
