import type { CheckStatus } from '../values/index.ts';

/** 0: done, no check failed. 1: done, a check failed. 2: the call, the graph or an input is wrong. */
export type ExitStatus = 0 | 1 | 2;

export function exitStatus(status: CheckStatus): ExitStatus {
  return status === 'fail' ? 1 : 0;
}
