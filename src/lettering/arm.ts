import type { Point } from '../geometry/index.ts';
import { type Crotch, isSmooth, type Shore } from './crotch.ts';
import { indexAlong, type Track, trackLength } from './track.ts';

/** What an arm is like where the junction stops to trouble it. Angles in radians. */
export interface ArmView {
  /** Index into the arm's outward track from which both of its walls are its own. */
  readonly safe: number;
  readonly point: Point;
  /** Direction outward. */
  readonly direction: number;
  /** 1/mm, positive where the arm turns left going outward. */
  readonly curvature: number;
  readonly width: number;
  /** Length of arm the figures were taken from, in its widths. */
  readonly span: number;
}

/** Length of the stretch the direction is taken from, in widths. */
const STRETCH = 1.6;

/** Views an arm from its junction: `left` and `right` are the crotches on either side of it. */
export function viewArm(shore: Shore, track: Track, left: Crotch, right: Crotch): ArmView {
  const safe = safeIndex(shore, track, left, right);
  const width = 2 * track.radius[Math.min(track.radius.length - 1, safe)]!;
  const end = indexAlong(track, Math.min(trackLength(track), track.along[safe]! + STRETCH * width));
  const first = end - safe < 3 ? Math.max(0, end - 6) : safe;
  const span = (track.along[end]! - track.along[first]!) / width;
  return { safe, ...courseOf(track, first, end, Math.min(1, span / STRETCH) ** 2), width: medianWidth(track, first, end), span };
}

/** The first place whose discs touch neither crotch's rounding; no farther than half the arm, should it be short. */
function safeIndex({ walk }: Shore, track: Track, left: Crotch, right: Crotch): number {
  const last = indexAlong(track, 0.5 * trackLength(track));
  for (let k = 0; k < last; k++) {
    const clearLeft = isSmooth(left) || walk.way(track.left[k]!, left.index) > left.before;
    const clearRight = isSmooth(right) || walk.way(right.index, track.right[k]!) > right.after;
    if (clearLeft && clearRight) return k;
  }
  return last;
}

function medianWidth({ radius }: Track, from: number, to: number): number {
  const some = radius.slice(from, to + 1).sort((a, b) => a - b);
  return 2 * some[some.length >> 1]!;
}

/** Place, direction and curvature at index `from`, of the parabola fitted to the places up to `to`. */
function courseOf(track: Track, from: number, to: number, trust: number): { point: Point; direction: number; curvature: number } {
  const [x0, y0] = [track.x[from]!, track.y[from]!];
  const heading = Math.atan2(track.y[to]! - y0, track.x[to]! - x0);
  const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
  const sums = new Array<number>(8).fill(0);
  for (let k = from; k <= to; k++) {
    const [dx, dy] = [track.x[k]! - x0, track.y[k]! - y0];
    const [u, v] = [dx * cos + dy * sin, dy * cos - dx * sin];
    const weight = (track.along[Math.min(to, k + 1)]! - track.along[Math.max(from, k - 1)]!) / 2;
    [1, u, u * u, u ** 3, u ** 4, v, u * v, u * u * v].forEach((term, i) => (sums[i]! += weight * term));
  }
  const [c0, c1, c2] = parabola(sums);
  const slope = Math.atan(c1);
  return {
    point: { x: x0 - c0 * sin, y: y0 + c0 * cos }, direction: heading + slope,
    curvature: (trust * 2 * c2) / (1 + c1 * c1) ** 1.5,
  };
}

/** Least squares from the moments 1, u, u2, u3, u4, v, uv, u2v; a line through too few places. */
function parabola([m0, m1, m2, m3, m4, b0, b1, b2]: readonly number[]): readonly [number, number, number] {
  const det3 = (a: number, b: number, c: number, d: number, e: number, f: number, g: number, h: number, i: number) =>
    a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  const det = det3(m0!, m1!, m2!, m1!, m2!, m3!, m2!, m3!, m4!);
  if (!(Math.abs(det) > 1e-9 * m0! * m2! * m4!)) return [0, 0, 0];
  return [
    det3(b0!, m1!, m2!, b1!, m2!, m3!, b2!, m3!, m4!) / det,
    det3(m0!, b0!, m2!, m1!, b1!, m3!, m2!, b2!, m4!) / det,
    det3(m0!, m1!, b0!, m1!, m2!, b1!, m2!, m3!, b2!) / det,
  ];
}
