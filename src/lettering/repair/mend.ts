import { type Cubic, cross, distance, dot, lerp, type Point, type Segment, splitCubic, subtract } from '../../geometry/index.ts';

/** How far rounding may put a control point off, as a share of the segments' size. */
const ROUNDING = 1e-9;

/** Chains of segments as one, two segments made one where they are the halves of one that was cut. */
export function mended(start: Point, chains: readonly (readonly Segment[])[]): Segment[] {
  const all: Segment[] = [];
  for (const [first, ...rest] of chains) {
    if (first === undefined) continue;
    const last = all.at(-1);
    const whole = last && wholeOf(all.at(-2)?.end ?? start, last, first);
    if (whole) all.pop();
    all.push(whole ?? first, ...rest);
  }
  return all;
}

/** The segment of which two are the halves; undefined when they are not. */
function wholeOf(start: Point, one: Segment, other: Segment): Segment | undefined {
  if (one.kind === 'line' && other.kind === 'line') return isStraight(start, one.end, other.end) ? other : undefined;
  if (one.kind !== 'cubic' || other.kind !== 'cubic') return undefined;
  const [before, after] = [distance(one.control2, one.end), distance(one.end, other.control1)];
  const share = before / (before + after);
  if (!(share > 0.001 && share < 0.999)) return undefined;
  const whole: Cubic = [start, lerp(start, one.control1, 1 / share), lerp(other.end, other.control2, 1 / (1 - share)), other.end];
  const [left, right] = splitCubic(whole, share);
  const size = distance(start, one.control1) + distance(one.control1, one.end) + distance(one.end, other.control2) + distance(other.control2, other.end);
  const pairs = [[left[2], one.control2], [left[3], one.end], [right[1], other.control1]] as const;
  return pairs.every(([a, b]) => distance(a, b) <= ROUNDING * size) ? { kind: 'cubic', control1: whole[1], control2: whole[2], end: other.end } : undefined;
}

function isStraight(a: Point, b: Point, c: Point): boolean {
  const [u, v] = [subtract(b, a), subtract(c, b)];
  return dot(u, v) > 0 && Math.abs(cross(u, v)) <= ROUNDING * dot(u, v);
}
