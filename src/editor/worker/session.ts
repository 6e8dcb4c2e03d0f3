import {
  type Catalogue, type Evaluation, type Evaluator, GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, type NodeShape, type OutputOf, createEvaluator,
} from '../../runtime/index.ts';
import { resultPorts } from '../../values/index.ts';
import { ANSWERS, type Answered, type Knowledge } from './answers.ts';
import { makeDesk } from './desk.ts';
import { makePainter } from './node-picture.ts';
import { makeReporter } from './node-report.ts';
import { outcomeOf } from './outcome.ts';
import { makePlayers } from './playing.ts';
import type { FromWorker, Outcome, Question, ToWorker } from './protocol.ts';
import { type Teller, makeTeller } from './teller.ts';

/** What a session needs of the thread it runs in. */
export interface SessionHost {
  readonly catalogue: Catalogue;
  readonly post: (message: FromWorker, transfer: readonly Transferable[]) => void;
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** Lets messages that wait be taken. */
  readonly pause: () => Promise<void>;
}

/** The worker's side of the conversation with the page: evaluates the newest document and answers questions about the last results. */
export interface Session {
  readonly receive: (message: ToWorker) => void;
}

type Request = Extract<ToWorker, { kind: 'evaluate' }>;
type Ask = Extract<ToWorker, { kind: 'ask' }>;

const EMPTY: GraphDocument = { format: GRAPH_FORMAT, version: GRAPH_VERSION, title: '', notes: '', nodes: [], wires: [], inputs: [], groups: [] };

interface State extends Knowledge {
  readonly host: SessionHost;
  readonly evaluator: Evaluator;
  readonly teller: Teller;
  newest: Int32Array | undefined;
  /** The greatest number that came with a message. */
  latest: number;
  active: boolean;
  pending: Request | undefined;
  /** Whether the last evaluation was to be whole, or was stopped: then nothing more will come of itself. */
  settled: boolean;
  /** Questions that wait for the present document to be computed whole. */
  readonly waiting: Ask[];
}

export function createSession(host: SessionHost): Session {
  const desk = makeDesk(host.catalogue, EMPTY);
  const painter = makePainter(desk);
  const state: State = {
    host, desk, painter, players: makePlayers(desk), evaluator: createEvaluator(host.catalogue, { now: host.now }),
    teller: makeTeller({ desk, painter, reporter: makeReporter(desk) }, (message) => { host.post(message, []); }, host.now),
    newest: undefined, latest: 0, active: false, pending: undefined, settled: true, waiting: [],
  };
  return { receive: (message) => { receive(state, message); } };
}

function receive(state: State, message: ToWorker): void {
  switch (message.kind) {
    case 'start':
      state.newest = message.newest;
      post(state, { kind: 'ready', shapes: [...state.host.catalogue.values()].map(shapeOf) });
      break;
    case 'evaluate':
      state.latest = Math.max(state.latest, message.revision);
      if (state.pending !== undefined) skip(state, state.pending);
      state.pending = message;
      if (!state.active) void work(state);
      break;
    case 'cancel':
      state.latest = Math.max(state.latest, message.revision);
      answerWaiting(state);
      break;
    case 'ask':
      if (message.question === 'files') {
        state.waiting.push(message);
        answerWaiting(state);
      } else answer(state, message);
  }
}

/** A declaration without its code and its examples, which may be large. */
function shapeOf({ compute: _, examples: __, ...shape }: { compute: unknown; examples: unknown } & NodeShape): NodeShape {
  return shape;
}

function post(state: State, message: FromWorker, transfer: readonly Transferable[] = []): void {
  state.host.post(message, transfer);
}

function skip(state: State, { revision }: Request): void {
  post(state, { kind: 'done', revision, cancelled: true, executed: [], milliseconds: 0 });
}

/** Evaluates what is asked for until nothing newer is. */
async function work(state: State): Promise<void> {
  state.active = true;
  try {
    for (let request = take(state); request !== undefined; request = take(state)) {
      if (isStale(state, request)) skip(state, request);
      else await evaluate(state, request);
    }
  } finally {
    state.active = false;
  }
  answerWaiting(state);
}

function take(state: State): Request | undefined {
  const request = state.pending;
  state.pending = undefined;
  return request;
}

/** The greatest number there is, whether its message came already or not. */
function newestNumber({ latest, newest }: State): number {
  return newest === undefined ? latest : Math.max(latest, Atomics.load(newest, 0));
}

function isStale(state: State, { revision }: Request): boolean {
  return newestNumber(state) > revision;
}

async function evaluate(state: State, request: Request): Promise<void> {
  const { host, desk } = state;
  const { revision, document } = request;
  const began = host.now();
  prepare(state, request);
  const executed: string[] = [];
  const run = async (wanted: readonly OutputOf[]) => {
    const evaluation = await evaluateWanted(state, request, wanted);
    executed.push(...evaluation.log.filter(({ action }) => action === 'executed').map(({ node }) => node));
    return evaluation;
  };
  let last = await run(wantedFirst(state, request));
  let outcome: Outcome | undefined;
  if (!last.cancelled && request.whole) {
    last = await run(resultPorts(document, host.catalogue));
    if (!last.cancelled) {
      desk.finish(last);
      outcome = outcomeOf(desk, last, request.graph);
    }
  }
  state.settled = request.whole || last.cancelled;
  post(state, { kind: 'done', revision, cancelled: last.cancelled, ...(outcome && { outcome }), executed, milliseconds: host.now() - began });
  if (outcome !== undefined) await tellAll(state, request);
}

function prepare({ desk, teller }: State, { document, forget }: Request): void {
  desk.adopt(document);
  if (forget) teller.forget();
  else teller.tidy();
}

function wantedFirst({ host, desk }: State, request: Request): OutputOf[] {
  return visible(request).flatMap((id) => {
    const node = desk.node(id);
    if (node === undefined) return [];
    const declaration = host.catalogue.get(node.type);
    // A node of unknown type has no outputs to ask for by name; any name tells its fault.
    return Object.keys(declaration?.outputs ?? { unknown: undefined }).map((port) => ({ node: id, port }));
  });
}

function visible({ seen, shown }: Request): string[] {
  return [...new Set([...seen, ...(shown === undefined ? [] : [shown])])];
}

function evaluateWanted(state: State, request: Request, wanted: readonly OutputOf[]): Promise<Evaluation> {
  const { host, desk, teller } = state;
  const inView = new Set(visible(request));
  return state.evaluator.evaluate(request.document, wanted, {
    isCancelled: () => isStale(state, request),
    pause: host.pause,
    onProgress: teller.progress(request.revision),
    onResult: (node, result) => {
      desk.keep(node, result);
      if (inView.has(node)) teller.report(request.revision, node);
      if (node === request.shown) teller.picture(request.revision, node);
    },
  });
}

/** Tells the nodes out of view, one at a time so that whatever is more urgent may come between. */
async function tellAll(state: State, request: Request): Promise<void> {
  for (const { id } of request.document.nodes) {
    if (state.teller.isKnown(id)) continue;
    await state.host.pause();
    if (isStale(state, request)) return;
    state.teller.report(request.revision, id);
  }
}

/** Files are made from the present document alone: an old program must not go to the machine by haste. */
function answerWaiting(state: State): void {
  const onItsWay = state.newest !== undefined && Atomics.load(state.newest, 0) > state.latest;
  if (state.active || onItsWay || !state.settled) return;
  for (const ask of state.waiting.splice(0)) answer(state, ask);
}

function answer(state: State, { id, question, ask }: Ask): void {
  const answered = answerTo(state, question, ask);
  if (answered.ok) post(state, { kind: 'answer', id, value: answered.value }, answered.transfer ?? []);
  else post(state, { kind: 'refused', id, problem: answered.problem });
}

function answerTo(state: State, question: Question, ask: unknown): Answered<unknown> {
  try {
    return (ANSWERS[question] as (knowledge: Knowledge, ask: unknown) => Answered<unknown>)(state, ask);
  } catch (thrown) {
    const found = thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown);
    return { ok: false, problem: { place: question, expected: 'an answer', found, advice: 'This is a defect of the program: report it.' } };
  }
}
