import { type Path, type Point, flattenPath, pathSegmentsWithStarts, arcAngles, arcTangent } from '../../src/geometry/index.ts';

/** Points on a parametric curve from t0 to t1 whose chords stand off it by about `sagitta`, rounded to `grid` mm. */
export function sampled(curve: (t: number) => Point, [t0, t1]: readonly [number, number], sagitta: number, grid: number): Point[] {
  const points = [curve(t0)];
  let t = t0;
  while (t < t1) {
    let step = (t1 - t0) / 4;
    while (standOff(curve, t, Math.min(t1, t + step)) > sagitta) step *= 0.9;
    t = Math.min(t1, t + step);
    points.push(curve(t));
  }
  return points.map((p) => rounded(p, grid));
}

function standOff(curve: (t: number) => Point, t0: number, t1: number): number {
  const [a, b] = [curve(t0), curve(t1)];
  return Math.max(...[0.25, 0.5, 0.75].map((s) => distanceToEdge(curve(t0 + (t1 - t0) * s), a, b)));
}

export const rounded = ({ x, y }: Point, grid: number): Point => (grid === 0 ? { x, y } : { x: Math.round(x / grid) * grid, y: Math.round(y / grid) * grid });

export function distanceToEdge(p: Point, a: Point, b: Point): number {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const uu = ux * ux + uy * uy;
  const t = uu === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * ux + (p.y - a.y) * uy) / uu));
  const [dx, dy] = [a.x + t * ux - p.x, a.y + t * uy - p.y];
  return Math.sqrt(dx * dx + dy * dy);
}

/** Distance from a point to a polyline by trying every edge. */
export function distanceToPolyline(p: Point, line: readonly Point[]): number {
  let best = Infinity;
  for (let i = 1; i < line.length; i++) best = Math.min(best, distanceToEdge(p, line[i - 1]!, line[i]!));
  return best;
}

/** The greatest distance of either polyline from the other, from points set closely along both. */
export function twoWayDistance(a: readonly Point[], b: readonly Point[]): number {
  return Math.max(oneWay(dense(a), b), oneWay(dense(b), a));
}

/** Both lines run alike, so the nearest edge is looked for near the last one found, and everywhere only when that fails. */
function oneWay(points: readonly Point[], line: readonly Point[]): number {
  let [worst, near] = [0, 1];
  for (const p of points) {
    let best = Infinity;
    for (let i = Math.max(1, near - 10); i < Math.min(line.length, near + 10); i++) {
      const away = distanceToEdge(p, line[i - 1]!, line[i]!);
      if (away < best) [best, near] = [away, i];
    }
    if (best > worst) {
      // A window may miss the nearest edge, never flatter: what it finds is an upper bound, settled by the full search.
      for (let i = 1; i < line.length; i++) {
        const away = distanceToEdge(p, line[i - 1]!, line[i]!);
        if (away < best) [best, near] = [away, i];
      }
    }
    worst = Math.max(worst, best);
  }
  return worst;
}

function dense(line: readonly Point[]): Point[] {
  const result: Point[] = [];
  for (let i = 1; i < line.length; i++) {
    const [p, q] = [line[i - 1]!, line[i]!];
    const steps = Math.min(40, Math.max(2, Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / 0.2)));
    for (let s = 0; s < steps; s++) result.push({ x: p.x + ((q.x - p.x) * s) / steps, y: p.y + ((q.y - p.y) * s) / steps });
  }
  result.push(line.at(-1)!);
  return result;
}

/** The path as a polyline that stands off it by 2e-5 mm at most, closed by its first point. */
export function asPolyline(path: Path): Point[] {
  const points = flattenPath(path, 2e-5);
  return path.closed ? [...points, points[0]!] : points;
}

/** Turns of the tangent where the path's segments meet, degrees. */
export function tangentBreaks(path: Path): number[] {
  const ends = pathSegmentsWithStarts(path).map(({ start, segment }) => {
    if (segment.kind === 'arc') {
      const arc = arcAngles(start, segment);
      return [arcTangent(arc, 0), arcTangent(arc, 1)] as const;
    }
    const size = Math.hypot(segment.end.x - start.x, segment.end.y - start.y);
    const u = { x: (segment.end.x - start.x) / size, y: (segment.end.y - start.y) / size };
    return [u, u] as const;
  });
  const pairs = ends.slice(1).map((next, i) => [ends[i]![1], next[0]] as const);
  if (path.closed && ends.length > 0) pairs.push([ends.at(-1)![1], ends[0]![0]]);
  return pairs.map(([u, v]) => (Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y)) * 180) / Math.PI);
}
