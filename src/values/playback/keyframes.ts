import type { DepthGrid } from '../../machining/proof/removal.ts';

/** Most bytes of depths kept aside; one state of 1.3 million cells takes 5 MB. */
const MOST_BYTES = 64 * 2 ** 20;
/** Each costs a copy on the way forward, which soon takes longer than sweeping again from the one before. */
const MOST_FRAMES = 8;

/** States of a grid kept at even distances along a course of `length` steps, so that going back need not begin anew. */
export interface Keyframes {
  /** Whether the state after `step` steps is to be kept and is not yet. */
  readonly wants: (step: number) => boolean;
  readonly keep: (step: number, grid: DepthGrid) => void;
  /** Brings the grid to the last kept state at or before `step`, untouched if there is none; tells after how many steps that is. */
  readonly restore: (step: number, grid: DepthGrid) => number;
}

export function makeKeyframes(length: number, cells: number): Keyframes {
  const frames = Math.min(MOST_FRAMES, Math.floor(MOST_BYTES / (4 * cells)));
  const every = Math.max(1, Math.ceil(length / (frames + 1)));
  const kept = new Map<number, Float32Array>();
  return {
    wants: (step) => frames > 0 && step > 0 && step % every === 0 && !kept.has(step),
    keep: (step, { depth }) => void kept.set(step, depth.slice()),
    restore(step, { depth }) {
      const at = Math.max(0, ...[...kept.keys()].filter((one) => one <= step));
      const state = kept.get(at);
      if (state) depth.set(state);
      else depth.fill(0);
      return at;
    },
  };
}
