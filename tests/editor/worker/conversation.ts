import type { Catalogue, GraphDocument } from '../../../src/runtime/index.ts';
import type { FromWorker, NodeReport, Question, Questions, ToWorker } from '../../../src/editor/worker/protocol.ts';
import { createSession } from '../../../src/editor/worker/session.ts';

type Of<K extends FromWorker['kind']> = Extract<FromWorker, { kind: K }>;
type Evaluate = Extract<ToWorker, { kind: 'evaluate' }>;

interface Surroundings {
  readonly newest?: Int32Array;
  /** Called at every pause. */
  readonly beforeNode?: () => void;
}

/** Talks with a session as the page does, in one thread. */
export function converse(catalogue: Catalogue, { newest, beforeNode }: Surroundings = {}) {
  const heard: FromWorker[] = [];
  const listeners = new Set<(message: FromWorker) => void>();
  const session = createSession({
    catalogue, now: () => performance.now(),
    post: (message) => {
      heard.push(message);
      for (const listen of listeners) listen(message);
    },
    pause: () => new Promise((resolve) => { setImmediate(() => { beforeNode?.(); resolve(); }); }),
  });
  const until = <M extends FromWorker>(fits: (message: FromWorker) => message is M) => new Promise<M>((resolve) => {
    const listen = (message: FromWorker) => {
      if (!fits(message)) return;
      listeners.delete(listen);
      resolve(message);
    };
    listeners.add(listen);
  });
  let lastId = 0;
  let revision = 0;
  session.receive({ kind: 'start', newest });
  const evaluate = (document: GraphDocument, rest: Partial<Evaluate> = {}): Promise<Of<'done'>> => {
    revision = rest.revision ?? revision + 1;
    const own = revision;
    if (newest !== undefined) Atomics.store(newest, 0, Math.max(own, Atomics.load(newest, 0)));
    const done = until((message): message is Of<'done'> => message.kind === 'done' && message.revision === own);
    session.receive({ kind: 'evaluate', revision: own, document, seen: [], shown: undefined, whole: true, graph: 'test.json', forget: false, ...rest });
    return done;
  };
  const ask = async <Q extends Question>(question: Q, about: Questions[Q]['ask']): Promise<Questions[Q]['answer']> => {
    lastId += 1;
    const id = lastId;
    const answered = until((message): message is Of<'answer'> | Of<'refused'> => 'id' in message && message.id === id);
    session.receive({ kind: 'ask', id, question, ask: about } as Extract<ToWorker, { kind: 'ask' }>);
    const message = await answered;
    if (message.kind === 'refused') throw message.problem;
    return message.value as Questions[Q]['answer'];
  };
  return {
    heard, session, evaluate, ask,
    /** Waits until everything that follows of itself has come. */
    quiet: async () => { for (let i = 0; i < 200; i++) await new Promise((resolve) => { setImmediate(resolve); }); },
    of: <K extends FromWorker['kind']>(kind: K) => heard.filter((message): message is Of<K> => message.kind === kind),
    reports: (): Record<string, NodeReport> => Object.fromEntries(heard.flatMap((message) => (message.kind === 'report' ? [[message.node, message.report]] : []))),
  };
}
