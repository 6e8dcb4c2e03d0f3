import { type Clipper64 } from 'clipper2-js';

/** The heights at which the engine's sweep has to stop, each once, the greatest first. */
export interface Scanlines {
  readonly clear: () => void;
  readonly isEmpty: () => boolean;
  readonly pollLast: () => number | undefined;
  readonly add: (height: number) => void;
}

/** Heights in a rising list, each put at its place by bisection. */
export function makeScanlines(): Scanlines {
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

/**
 * Gives the engine this list in place of its own, which searches and sorts all heights anew for each one added: with
 * some thousand vertices that takes most of the time of an operation. The answers are the same. An engine that keeps its heights
 * elsewhere is left as it is.
 */
export function quicken(engine: Clipper64): void {
  const inside = engine as unknown as { _scanlineList?: Partial<Scanlines> };
  if (inside._scanlineList?.add && inside._scanlineList.pollLast) inside._scanlineList = makeScanlines();
}
