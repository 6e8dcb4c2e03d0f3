/** Asks one question at a time; of those that come meanwhile only the newest is asked next. */
export interface NewestOnly<Q> {
  readonly ask: (question: Q) => void;
  /** Forgets what waits, and the answer that is on its way. */
  readonly stop: () => void;
}

export interface Handling<Q, A> {
  readonly send: (question: Q) => Promise<A>;
  readonly take: (answer: A, question: Q) => void;
  readonly refuse: (reason: unknown, question: Q) => void;
  /** Least milliseconds from one question to the next. */
  readonly every: number;
}

export function newestOnly<Q, A>({ send, take, refuse, every }: Handling<Q, A>): NewestOnly<Q> {
  let waiting: { readonly question: Q } | undefined;
  let busy = false;
  let age = 0;

  const next = () => {
    if (busy || waiting === undefined) return;
    const { question } = waiting;
    const asked = age;
    const since = performance.now();
    waiting = undefined;
    busy = true;
    const unlessStopped = (act: () => void) => { if (asked === age) act(); };
    send(question)
      .then((answer) => unlessStopped(() => take(answer, question)), (reason: unknown) => unlessStopped(() => refuse(reason, question)))
      .finally(() => setTimeout(() => { busy = false; next(); }, Math.max(0, every - (performance.now() - since))));
  };

  return {
    ask(question) {
      waiting = { question };
      next();
    },
    stop() {
      waiting = undefined;
      age += 1;
    },
  };
}
