import type { Question, Questions } from './protocol.ts';

/** Asks the worker something; rejects with a `Problem` when there is no answer. */
export function ask<Q extends Question>(question: Q, _ask: Questions[Q]['ask']): Promise<Questions[Q]['answer']> {
  return Promise.reject(new Error(`No worker to ask for ${question}.`));
}

/** Starts the worker and keeps the state's reports up to date from then on; done once the node types are known. */
export function startWorker(): Promise<void> {
  return Promise.resolve();
}
