import { ClipType, FillRule, type Path64, type Paths64, PathType } from 'clipper2-js';
import { makeEngine } from './engine.ts';
import { type Point } from './point.ts';
import { type Loop, loopsBounds } from './region.ts';

/**
 * Integer units per millimetre inside the boolean kernel: 0.1 um, a tenth of the finest step a machine of this kind
 * can make. Decimal, so that a coordinate of up to four decimals comes back as the identical number. The kernel's
 * orientation tests are exact for work up to 2^26 units (6.7 m) across and merely accurate beyond.
 */
export const UNITS_PER_MM = 10_000;

/** The greatest coordinate, in mm, that regions may have in any direction: 10^9 units, far inside exact integers. */
export const COORDINATE_LIMIT_MM = 100_000;

/** The most vertices one boolean operation takes; beyond it an answer would take minutes and gigabytes. */
export const VERTEX_LIMIT = 2_000_000;

/** The most crossings of edges one boolean operation finds: some seconds of work. Drawings have thousands, tangles of n edges n^2. */
const CROSSING_LIMIT = 1_000_000;

/** A loop in whole kernel units. */
export type UnitLoop = readonly Point[];

/** What is inside, by winding number: not zero, odd, or at least one. */
export type FillRuleName = 'nonzero' | 'evenodd' | 'positive';

const FILL: Readonly<Record<FillRuleName, FillRule>> = {
  nonzero: FillRule.NonZero, evenodd: FillRule.EvenOdd, positive: FillRule.Positive,
};

const CLIP = { union: ClipType.Union, subtract: ClipType.Difference, intersect: ClipType.Intersection } as const;

/** The boolean operations of the kernel. */
export type BooleanOperation = keyof typeof CLIP;

function toUnit(value: number): number {
  // Written so that NaN fails too.
  if (!(Math.abs(value) <= COORDINATE_LIMIT_MM)) {
    throw new RangeError(`coordinate ${value} mm: expected a number between -${COORDINATE_LIMIT_MM} and ${COORDINATE_LIMIT_MM}`);
  }
  // Adding zero turns -0 into 0.
  return Math.round(value * UNITS_PER_MM) + 0;
}

/** Twice the signed area of the triangle a, b, c: positive when it turns left. */
export const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/**
 * Drops repeated points, points on a straight run and spikes that go out and come back the same way.
 * What is left turns at every vertex; a loop without area becomes empty.
 */
export function cleanLoop(loop: UnitLoop): UnitLoop {
  const kept: Point[] = [];
  for (const point of loop) {
    while (kept.length > 1 && turn(kept[kept.length - 2]!, kept[kept.length - 1]!, point) === 0) kept.pop();
    const last = kept[kept.length - 1];
    if (last === undefined || last.x !== point.x || last.y !== point.y) kept.push(point);
  }
  return trimSeam(kept);
}

/** Cleans where the end of the list meets its start. */
function trimSeam(points: readonly Point[]): UnitLoop {
  let from = 0;
  let to = points.length;
  while (to - from > 2) {
    const first = points[from]!;
    const last = points[to - 1]!;
    if (turn(points[to - 2]!, last, first) === 0) to -= 1;
    else if (turn(last, first, points[from + 1]!) === 0) from += 1;
    else return from === 0 && to === points.length ? points : points.slice(from, to);
  }
  return [];
}

/** Rounds a loop in mm to kernel units and cleans it. Throws RangeError on NaN, infinity and beyond the coordinate limit. */
export function toUnits(loop: Loop): UnitLoop {
  return cleanLoop(loop.map(({ x, y }) => ({ x: toUnit(x), y: toUnit(y) })));
}

/** A loop of kernel units in mm. */
export function fromUnits(loop: UnitLoop): Loop {
  return loop.map(({ x, y }) => ({ x: x / UNITS_PER_MM, y: y / UNITS_PER_MM }));
}

/** A loop thinner on average than one unit is a leftover of rounding, not a part of anybody's drawing. */
function isSliver(loop: UnitLoop): boolean {
  let twiceArea = 0;
  let perimeter = 0;
  let last = loop[loop.length - 1]!;
  for (const point of loop) {
    // Relative to the first point, so that far from the origin the products stay exact.
    twiceArea += turn(loop[0]!, last, point);
    perimeter += Math.hypot(point.x - last.x, point.y - last.y);
    last = point;
  }
  return Math.abs(twiceArea) < perimeter;
}

/** What goes into one boolean operation. Loops with fewer than three distinct corners count for nothing. */
export interface BooleanInput {
  readonly operation: BooleanOperation;
  readonly rule: FillRuleName;
  readonly subject: readonly UnitLoop[];
  readonly clip?: readonly UnitLoop[];
}

function checkWork(loops: readonly UnitLoop[]): void {
  const vertices = loops.reduce((sum, loop) => sum + loop.length, 0);
  if (vertices > VERTEX_LIMIT) throw new RangeError(`${vertices} vertices: expected at most ${VERTEX_LIMIT} in one operation`);
}

/** The engine's answer, or undefined when it gave up, which it does without a word on some crowds of near-coincident crossings. */
function sweep({ operation, rule, subject, clip = [] }: BooleanInput): UnitLoop[] | undefined {
  const budget = { crossings: CROSSING_LIMIT };
  const engine = makeEngine(budget);
  for (const loop of subject) if (loop.length > 2) engine.addPath(loop as Path64, PathType.Subject);
  for (const loop of clip) if (loop.length > 2) engine.addPath(loop as Path64, PathType.Clip);
  const solution: Paths64 = [];
  const done = engine.execute(CLIP[operation], FILL[rule], solution);
  if (budget.crossings < 0) throw new RangeError(`edges that cross: expected at most ${CROSSING_LIMIT} crossings in one operation`);
  return done ? solution.map(cleanLoop).filter((loop) => loop.length > 2 && !isSliver(loop)) : undefined;
}

const quarterTurn = (loop: UnitLoop): UnitLoop => loop.map(({ x, y }) => ({ x: -y + 0, y: x }));
const quarterTurnBack = (loop: UnitLoop): UnitLoop => loop.map(({ x, y }) => ({ x: y, y: -x + 0 }));

function turnedSweep(input: BooleanInput): UnitLoop[] | undefined {
  const { subject, clip = [] } = input;
  return sweep({ ...input, subject: subject.map(quarterTurn), clip: clip.map(quarterTurn) })?.map(quarterTurnBack);
}

function isWide(loops: readonly UnitLoop[]): boolean {
  const box = loopsBounds(loops);
  return box !== undefined && box.maxX - box.minX > box.maxY - box.minY;
}

/**
 * One boolean operation of the kernel, or undefined when it cannot be done at once. The result's outer loops are
 * counter-clockwise and its holes clockwise. The cost grows with the number of vertices times the number of edges that
 * the sweep line crosses, so the sweep goes along the longer side, and callers feed it little at a time.
 */
export function attempt(input: BooleanInput): UnitLoop[] | undefined {
  const all = [...input.subject, ...(input.clip ?? [])];
  checkWork(all);
  // The other direction meets the crossings in another order, which nearly always helps an engine that gave up.
  return isWide(all) ? turnedSweep(input) ?? sweep(input) : sweep(input) ?? turnedSweep(input);
}

/** As `attempt`, for inputs that hold no crowd of crossings: throws an Error when the kernel gives up all the same. */
export function execute(input: BooleanInput): UnitLoop[] {
  const loops = attempt(input);
  if (loops === undefined) throw new Error(`the boolean kernel gave up on ${input.subject.length} loops: expected fewer near-coincident crossings`);
  return loops;
}
