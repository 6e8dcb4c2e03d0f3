import type { Point } from '../geometry/index.ts';
import { type Crotch, isSmooth, type Shore } from './crotch.ts';
import { courseAtEnd } from './ends.ts';
import type { Grown } from './grow.ts';
import { STEP } from './settle.ts';
import { indexAlong, type Track, trackLength } from './track.ts';

/** What an arm is like where the junction stops to trouble it. Angles in radians. */
export interface ArmView {
  /** Index into the grown line, the last place before the middle of the junction. */
  readonly tip: number;
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
const STRETCH = 1;

/** Beyond its junction's roundings an arm still narrows by this much per length where it is not its own yet. */
const NARROWING = 0.02;

/** No more than so many widths of it are passed over. */
const LONGEST_WIDENING = 3;

/**
 * The first place whose discs touch neither crotch's rounding and grow no wider towards the junction; no farther than half the arm,
 * should it be short. `narrows` if as far as was looked it narrows away from the junction.
 */
export function safeIndex({ walk }: Shore, track: Track, left: Crotch, right: Crotch): { clear: number; safe: number; narrows: boolean } {
  const last = indexAlong(track, 0.5 * trackLength(track));
  let k = 0;
  for (; k < last; k++) {
    const clearLeft = isSmooth(left) || walk.way(track.left[k]!, left.index) > left.before;
    const clearRight = isSmooth(right) || walk.way(right.index, track.right[k]!) > right.after;
    if (clearLeft && clearRight) break;
  }
  const clear = k;
  const limit = Math.min(last, indexAlong(track, track.along[k]! + LONGEST_WIDENING * 2 * track.radius[k]!));
  for (; k < limit; k++) {
    const ahead = indexAlong(track, track.along[k]! + track.radius[k]!);
    if (track.radius[k]! - track.radius[ahead]! < NARROWING * (track.along[ahead]! - track.along[k]!)) break;
  }
  return { clear, safe: k, narrows: k >= limit };
}

/** Views a grown arm where it comes nearest to the middle of its junction. */
export function viewArm(grown: Grown, middle: Point): ArmView {
  const tip = tipToward(grown, middle);
  const line = grown.line.slice(0, tip + 1);
  const half = line.at(-1)!.half;
  const { heading, curvature } = courseAtEnd(line, STRETCH * 2 * half);
  const span = line.length * STEP;
  return { tip, point: line.at(-1)!, direction: heading + Math.PI, curvature: -curvature * Math.min(1, span / STRETCH) ** 2, width: 2 * medianOf(line.slice(-12).map((place) => place.half)), span };
}

/** Views an arm too short for a course of its own: it leads from the middle of its junction to its end. */
export function viewStub({ x, y, radius }: Track, middle: Point): ArmView {
  const point = { x: x.at(-1)!, y: y.at(-1)! };
  const direction = Math.atan2(point.y - middle.y, point.x - middle.x);
  return { tip: -1, point, direction, curvature: 0, width: 2 * radius.at(-1)!, span: 0 };
}

function tipToward({ line, base }: Grown, { x, y }: Point): number {
  for (let i = Math.max(1, base); i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    if ((b.x - a.x) * (x - b.x) + (b.y - a.y) * (y - b.y) < 0) return i - 1;
  }
  return line.length - 1;
}

const medianOf = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
