import type { Problem } from '../../runtime/index.ts';
import type { FromWorker, Question, Questions, ToWorker } from './protocol.ts';

/** As much of a worker as is needed. */
export interface Thread {
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  readonly postMessage: (message: ToWorker) => void;
  readonly terminate: () => void;
}

/** A worker that is there again after it died. */
export interface Link {
  readonly send: (message: ToWorker) => void;
  readonly ask: <Q extends Question>(question: Q, ask: Questions[Q]['ask']) => Promise<Questions[Q]['answer']>;
  readonly restart: () => void;
}

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (problem: Problem) => void;
}

const LOST: Problem = { expected: 'an answer', found: 'a computation that broke off', advice: 'Try it again.' };

/**
 * Keeps a worker made by `make`. Messages other than answers go to `take`. When the worker dies its open questions are refused,
 * and `died` is told, with what is known of the reason, and may ask for another one.
 */
export function makeLink(make: () => Thread, take: (message: FromWorker) => void, died: (reason: string) => void): Link {
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  let thread = begin();

  function begin(): Thread {
    const started = make();
    started.onmessage = ({ data }) => { if (!settle(waiting, data)) take(data); };
    started.onerror = (event) => {
      event.preventDefault();
      lose(event.message || 'the worker could not be started');
    };
    started.onmessageerror = () => { lose('a message could not be read'); };
    return started;
  }

  function lose(reason: string): void {
    stop(thread);
    const open = [...waiting.values()];
    waiting.clear();
    for (const { reject } of open) reject(LOST);
    died(reason);
  }

  return {
    send: (message) => { thread.postMessage(message); },
    ask: (question, ask) => new Promise((resolve, reject) => {
      lastId += 1;
      waiting.set(lastId, { resolve, reject });
      thread.postMessage({ kind: 'ask', id: lastId, question, ask } as Extract<ToWorker, { kind: 'ask' }>);
    }),
    restart: () => {
      stop(thread);
      thread = begin();
    },
  };
}

/** Nothing that is still on its way from a worker given up may be taken for its successor's. */
function stop(thread: Thread): void {
  thread.onmessage = thread.onerror = thread.onmessageerror = null;
  thread.terminate();
}

/** Hands an answer to who waits for it; false for any other message. */
function settle(waiting: Map<number, Waiting>, message: FromWorker): boolean {
  if (message.kind !== 'answer' && message.kind !== 'refused') return false;
  const asked = waiting.get(message.id);
  waiting.delete(message.id);
  if (message.kind === 'answer') asked?.resolve(message.value as never);
  else asked?.reject(message.problem);
  return true;
}
