import { type Active, Clipper64, InternalClipper } from 'clipper2-js';
import { type Point } from './point.ts';

/** The heights at which the engine's sweep has to stop, each once, the greatest first. */
interface Scanlines {
  readonly clear: () => void;
  readonly isEmpty: () => boolean;
  readonly pollLast: () => number | undefined;
  readonly add: (height: number) => void;
}

/** Heights in a rising list, each put at its place by bisection. */
function makeScanlines(): Scanlines {
  const heights: number[] = [];
  return {
    clear: () => { heights.length = 0; },
    isEmpty: () => heights.length === 0,
    pollLast: () => heights.pop(),
    add: (height) => {
      let low = 0;
      let high = heights.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (heights[middle]! < height) low = middle + 1;
        else high = middle;
      }
      if (heights[low] !== height) heights.splice(low, 0, height);
    },
  };
}

/** Parts of the engine that its types keep private. */
interface Inside {
  _scanlineList?: Scanlines;
  readonly _intersectList?: { readonly pt: Point; readonly edge1: Active; readonly edge2: Active }[];
  readonly _currentBotY?: number;
  addNewIntersectNode?: (a: Active, b: Active, topY: number) => void;
}

/**
 * The engine's own list searches and sorts all heights anew for each one added; with some thousand vertices that takes
 * most of the time of an operation. This one gives the same answers.
 */
function quicken(inside: Inside): void {
  if (inside._scanlineList) inside._scanlineList = makeScanlines();
}

function xAt({ bot, top, dx }: Active, y: number): number {
  if (y === top.y || top.x === bot.x) return top.x;
  return y === bot.y ? bot.x : bot.x + Math.round(dx * (y - bot.y));
}

/** Flatter than this (change of x per step of y), an edge's x at a height says too little about where another one crosses it. */
const FLAT = 100;

/** Where two edges cross, held within the strip between two heights that the sweep is in. Always a new point. */
function crossing(a: Active, b: Active, topY: number, bottomY: number): Point {
  const { ip, success } = InternalClipper.getIntersectPoint(a.bot, a.top, b.bot, b.top);
  const found = success ? ip : { x: a.curX, y: topY };
  if (found.y >= topY && found.y <= bottomY) return { x: found.x, y: found.y };
  const [steep, flat] = Math.abs(a.dx) < Math.abs(b.dx) ? [a, b] : [b, a];
  if (Math.abs(flat.dx) > FLAT) {
    const { x, y } = InternalClipper.getClosestPtOnSegment(found, flat.bot, flat.top);
    return { x, y };
  }
  const y = found.y < topY ? topY : bottomY;
  return { x: xAt(steep, y), y };
}

/**
 * Of two edges that cross at an end of one, the engine takes the input's own vertex for the crossing, moves it into the
 * strip, and reads the edge's slope off the moved vertex: nearly collinear edges, as any stroke that runs back over
 * itself has, get corners far away. Same rule here, with points of its own.
 */
function mendCrossings(inside: Inside, budget: Budget): void {
  const { _intersectList: list } = inside;
  if (!inside.addNewIntersectNode || !list || inside._currentBotY === undefined) return;
  inside.addNewIntersectNode = (a, b, topY) => {
    budget.crossings -= 1;
    if (budget.crossings < 0) throw new RangeError('more crossings than allowed');
    list.push({ pt: crossing(a, b, topY, inside._currentBotY!), edge1: a, edge2: b });
  };
}

/** How many crossings an operation may still find. The engine swallows what is thrown in it, so look here afterwards: below 0 it gave up for that. */
export interface Budget {
  crossings: number;
}

/** A boolean engine with its two known faults mended from outside; a version that is built otherwise is left as it is. */
export function makeEngine(budget: Budget): Clipper64 {
  const engine = new Clipper64();
  engine.preserveCollinear = false;
  const inside = engine as unknown as Inside;
  quicken(inside);
  mendCrossings(inside, budget);
  return engine;
}
