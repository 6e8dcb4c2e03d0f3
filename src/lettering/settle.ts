import type { Point, Vector } from '../geometry/index.ts';
import { addEquation, emptyNormals, solveNormals } from './banded.ts';
import type { Sample } from './course.ts';
import type { Shore } from './crotch.ts';
import { tangentsOf } from './fit-cubics.ts';
import { type Foot, footFrom } from './walls.ts';

/** A place of a settled stroke; `seen` counts the walls that placed it: 2, 1, or 0 where it only bridges. */
export interface Settled extends Point {
  readonly half: number;
  readonly seen: number;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** Samples stand this share of the width apart. */
export const STEP = 1 / 7;

/** Wiggles of the centre line, and of the half-width, shorter than about six times this share of the width are smoothed away. */
export interface Stiffness {
  readonly smoothing: number;
  readonly widthSmoothing: number;
  /** Where fewer than two walls are seen the half-width levels out: how hard, as a share of the width. */
  readonly levelling: number;
}

export const USUAL: Stiffness = { smoothing: 0.3, widthSmoothing: 0.25, levelling: 0.05 };

const ROUNDS = 3;

/** A closed course is settled with this many widths of itself repeated at both ends. */
const OVERLAP = 5;

/** Weight with which a held sample stays. */
const HOLD = 20;

/**
 * Weight with which any other stays: too little to matter next to what bends a bridge of a hundred widths, enough that a hair's
 * run of thousands of samples without a wall leaves the equations soluble.
 */
const FLOATING = 1e-10;

/** A wall seen more aslant than this (cosine) is not across from the centre line. */
const ACROSS = 0.8;

/**
 * The smooth line with a smooth half-width whose distance to each wall it can see is the half-width: least squares with third
 * differences of place and second differences of half-width penalised. Where both walls are seen that is the medial axis, where one is seen
 * that wall moved by the half-width, and between, a bridge of even change of curvature.
 */
export function settle(shore: Shore, samples: readonly Sample[], closed: boolean): Settled[] {
  let line: Settled[] = samples.map((sample) => ({ ...sample, seen: 2 }));
  const step = stepFor(line);
  for (let round = 0; round < ROUNDS; round++) {
    const even = resample(line, closed, step);
    if (even.length < 4) return even;
    const wrap = closed ? Math.min(even.length, Math.ceil(OVERLAP / STEP)) : 0;
    const wrapped = closed ? [...even.slice(-wrap), ...even, ...even.slice(0, wrap)] : even;
    line = relaxed(shore, wrapped, USUAL).slice(wrap, wrap + even.length);
  }
  return line;
}

/** A settled line has at most this many times the samples of its course, or a broad stroke that begins in a hair would take thousands. */
const DENSEST = 4;

function stepFor(line: readonly Settled[]): number {
  const total = line.reduce((sum, { x, y }, i) => sum + (i === 0 ? 0 : Math.hypot(x - line[i - 1]!.x, y - line[i - 1]!.y)), 0);
  return Math.max(STEP * 2 * medianHalf(line), total / (DENSEST * line.length));
}

function medianHalf(line: readonly { half: number }[]): number {
  const halves = line.map(({ half }) => half).sort((a, b) => a - b);
  return halves[halves.length >> 1]!;
}

/** Places at even lengths along a polyline, neighbours' walls carried over. */
export function resample(line: readonly Settled[], closed: boolean, step: number): Settled[] {
  const ring = closed ? [...line, line[0]!] : line;
  const along = [0];
  for (let i = 1; i < ring.length; i++) along.push(along[i - 1]! + Math.hypot(ring[i]!.x - ring[i - 1]!.x, ring[i]!.y - ring[i - 1]!.y));
  const total = along.at(-1)!;
  const count = Math.max(closed ? 8 : 6, Math.ceil(total / step));
  let k = 0;
  return Array.from({ length: closed ? count : count + 1 }, (_, i): Settled => {
    const way = (i / count) * total;
    while (k < ring.length - 2 && along[k + 1]! < way) k++;
    const [a, b] = [ring[k]!, ring[k + 1] ?? ring[k]!];
    const t = Math.min(1, (way - along[k]!) / ((along[k + 1] ?? 0) - along[k]! || 1));
    const nearer = t < 0.5 ? a : b;
    return { ...nearer, x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), half: a.half + t * (b.half - a.half) };
  });
}

/** One step of Gauss and Newton: unknown are each sample's move along its normal and its half-width. The first `held` samples are held where they are. */
export function relaxed({ boundary }: Shore, line: readonly Settled[], stiffness: Stiffness, held = 0): Settled[] {
  const normals = tangentsOf(line, false).map(({ x, y }): Vector => ({ x: -y, y: x }));
  const count = line.length;
  const system = emptyNormals(2 * count, 7);
  const feet = line.map((sample, i) => ({
    left: nearestFoot(sample.left, (hint) => footFrom(boundary, hint, sample), normals[i]!, 1),
    right: nearestFoot(sample.right, (hint) => footFrom(boundary, hint, sample), normals[i]!, -1),
  }));
  feet.forEach(({ left, right }, i) => {
    for (const foot of [left, right]) {
      if (foot === undefined) continue;
      const slant = normals[i]!.x * foot.toward.x + normals[i]!.y * foot.toward.y;
      addEquation(system, [2 * i, 2 * i + 1], [slant, 1], foot.distance, 1);
    }
    const hold = i < held ? HOLD : 1e-6;
    addEquation(system, [2 * i], [1], 0, i < held ? HOLD : FLOATING);
    addEquation(system, [2 * i + 1], [1], line[i]!.half, hold);
  });
  addPenalties(system, line, normals, stiffness);
  const found = solveNormals(system);
  // Where rounding ate what the equations say, the line stays as it was.
  if (!found.every(Number.isFinite)) return [...line];
  return line.map((sample, i): Settled => {
    const move = Math.max(-sample.half, Math.min(sample.half, found[2 * i]!));
    const { left, right } = feet[i]!;
    return {
      x: sample.x + move * normals[i]!.x, y: sample.y + move * normals[i]!.y, half: Math.max(0.5 * sample.half, found[2 * i + 1]!),
      seen: (left ? 1 : 0) + (right ? 1 : 0), left: left ? [left.index] : sample.left, right: right ? [right.index] : sample.right,
    };
  });
}

function nearestFoot(hints: readonly number[], find: (hint: number) => Foot, normal: Vector, side: 1 | -1): Foot | undefined {
  let best: Foot | undefined;
  for (const hint of hints) {
    const foot = find(hint);
    if (side * (foot.toward.x * normal.x + foot.toward.y * normal.y) < ACROSS) continue;
    if (best === undefined || foot.distance < best.distance) best = foot;
  }
  return best;
}

/** In steps, lines smoothed over more than this are not smoothed harder: the power of a broad stroke's width in steps of a hair's is beyond what can be reckoned with. */
const STIFFEST = 64;

const stiff = (steps: number): number => Math.min(STIFFEST, steps);

function addPenalties(system: ReturnType<typeof emptyNormals>, line: readonly Settled[], normals: readonly Vector[], { smoothing, widthSmoothing, levelling }: Stiffness): void {
  const third = [-1, 3, -3, 1];
  const step = Math.hypot(line[1]!.x - line[0]!.x, line[1]!.y - line[0]!.y);
  for (let i = 0; i + 3 < line.length; i++) {
    const local = (line[i]!.half + line[i + 3]!.half);
    const places = third.map((_, k) => 2 * (i + k));
    const weight = stiff((smoothing * local) / step) ** 6;
    for (const axis of ['x', 'y'] as const) {
      const value = third.reduce((sum, factor, k) => sum - factor * line[i + k]![axis], 0);
      addEquation(system, places, third.map((factor, k) => factor * normals[i + k]![axis]), value, weight);
    }
  }
  for (let i = 0; i + 1 < line.length; i++) {
    const walls = line[i + 1]!.left.length > 0 && line[i + 1]!.right.length > 0;
    if (!walls) addEquation(system, [2 * i + 1, 2 * i + 3], [-1, 1], 0, stiff((levelling * 2 * line[i]!.half) / step) ** 2);
  }
  for (let i = 0; i + 2 < line.length; i++) {
    addEquation(system, [2 * i + 1, 2 * i + 3, 2 * i + 5], [1, -2, 1], 0, stiff((widthSmoothing * 2 * line[i + 1]!.half) / step) ** 4);
  }
}
