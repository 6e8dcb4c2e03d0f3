import type { EvaluateOptions } from './evaluation.ts';
import type { Context } from './node.ts';

/** Why an execution stopped at a checkpoint: it was cancelled, or a callback of the host threw. */
export type Interruption = 'cancelled' | { readonly thrown: unknown };

export interface Execution {
  /** What `compute` is given. */
  readonly context: Context;
  /** Tells the host how far the node is, unless it was told that already. */
  readonly progress: (done: number) => void;
  /** What stopped the execution at a checkpoint, if anything did. */
  readonly interruption: () => Interruption | undefined;
}

/**
 * The context of one execution of a node. A checkpoint stops `compute` by throwing; since `compute` might catch that, what happened
 * is also noted here. What the host's own callbacks throw is noted likewise: it is no fault of the node.
 */
export function watchExecution({ isCancelled, onProgress }: EvaluateOptions, node: string): Execution {
  let furthest = -1;
  let interruption: Interruption | undefined;
  const progress = (done: number) => {
    const within = Math.min(1, Math.max(0, done));
    if (!(within > furthest)) return;
    furthest = within;
    onProgress?.(node, within);
  };
  const checkpoint = (done: number) => {
    try {
      if (isCancelled?.()) interruption ??= 'cancelled';
      else progress(done);
    } catch (thrown) {
      interruption ??= { thrown };
    }
    if (interruption !== undefined) throw new Error('The evaluation was interrupted.');
  };
  return { context: { checkpoint }, progress, interruption: () => interruption };
}
