import { type Active, Clipper64 } from 'clipper2-js';

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
  addNewIntersectNode?: (a: Active, b: Active, topY: number) => void;
}

/**
 * The engine's own list searches and sorts all heights anew for each one added; with some thousand vertices that takes
 * most of the time of an operation. This one gives the same answers.
 */
function quicken(inside: Inside): void {
  if (inside._scanlineList) inside._scanlineList = makeScanlines();
}

/**
 * Where two edges cross at an end of one, the engine takes the input's own vertex for the crossing and may then move it
 * into the strip being swept, which bends the input and turns up as wrong areas far away. So it gets copies to move.
 */
function protectVertices(inside: Inside): void {
  const add = inside.addNewIntersectNode;
  if (!add) return;
  inside.addNewIntersectNode = (a, b, topY) => {
    const [aBot, aTop, bBot, bTop] = [a.bot, a.top, b.bot, b.top];
    a.bot = { x: aBot.x, y: aBot.y };
    a.top = { x: aTop.x, y: aTop.y };
    b.bot = { x: bBot.x, y: bBot.y };
    b.top = { x: bTop.x, y: bTop.y };
    add.call(inside, a, b, topY);
    a.bot = aBot;
    a.top = aTop;
    b.bot = bBot;
    b.top = bTop;
  };
}

/** A boolean engine with its two known faults mended from outside; a version that is built otherwise is left as it is. */
export function makeEngine(): Clipper64 {
  const engine = new Clipper64();
  engine.preserveCollinear = false;
  const inside = engine as unknown as Inside;
  quicken(inside);
  protectVertices(inside);
  return engine;
}
