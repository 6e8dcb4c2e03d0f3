import type { StoreApi } from 'zustand/vanilla';
import type { GraphDocument } from '../../runtime/index.ts';
import type { FromWorker, NodeReport, ToWorker } from '../worker/protocol.ts';
import type { EditorState } from './editor.ts';
import { mostToShow } from './shown.ts';
import { sameWork } from './same-work.ts';

/** What following the state needs of its surroundings. */
export interface Surroundings {
  readonly store: StoreApi<EditorState>;
  readonly send: (message: ToWorker) => void;
  /** Holds the number of the newest evaluation asked for; undefined where threads cannot share memory. */
  readonly newest: Int32Array | undefined;
  /** Calls once, soon, before the page is painted next. */
  readonly soon: (call: () => void) => void;
  /** A clock in milliseconds. */
  readonly now: () => number;
}

/** Keeps the reports of the state up to date with its document. */
export interface Evaluating {
  /** Takes a message about an evaluation. */
  readonly receive: (message: FromWorker) => void;
  /** Stops what is being computed; the next change of the document computes again. */
  readonly cancel: () => void;
  /** Computes again what is not done, whatever happened before. */
  readonly recompute: () => void;
  /** The worker is a new one that knows nothing. */
  readonly restart: () => void;
  readonly stop: () => void;
}

/**
 * While a gesture lasts, an evaluation on its way may run so long, in milliseconds, before a newer one takes its place: else a slider
 * that never rests would show nothing.
 */
const PATIENCE = 250;

/** What decides whether an evaluation differs from the last one. */
type Wanted = Omit<Extract<ToWorker, { kind: 'evaluate' }>, 'revision' | 'forget'>;

interface Following extends Surroundings {
  revision: number;
  /** What was asked for last, and when; undefined when the next change must ask in any case. */
  asked: { readonly request: Wanted; readonly at: number; readonly of: EditorState; done: boolean } | undefined;
  /** The reports that this put into the state: others are there after a document was opened. */
  reports: EditorState['reports'] | undefined;
  /** Messages of evaluations before this number belong to another document. */
  since: number;
  /** A person stopped the evaluation of this document. */
  stopped: GraphDocument | undefined;
  scheduled: boolean;
  inbox: FromWorker[];
  flushing: boolean;
}

export function followState(surroundings: Surroundings): Evaluating {
  const { store } = surroundings;
  const following: Following = {
    ...surroundings, revision: 0, asked: undefined, reports: undefined, since: 0, stopped: undefined, scheduled: false, inbox: [], flushing: false,
  };
  const unsubscribe = store.subscribe(() => { schedule(following); });
  schedule(following);
  return {
    receive: (message) => { receive(following, message); },
    cancel: () => { cancel(following); },
    recompute: () => {
      following.stopped = undefined;
      following.asked = undefined;
      schedule(following);
    },
    restart: () => {
      following.asked = undefined;
      following.reports = undefined;
      schedule(following);
    },
    stop: unsubscribe,
  };
}

function schedule(following: Following): void {
  if (following.scheduled) return;
  following.scheduled = true;
  following.soon(() => {
    following.scheduled = false;
    ask(following);
  });
}

/** Asks for an evaluation if something that matters for it changed. */
function ask(following: Following): void {
  const state = following.store.getState();
  if (isAsked(following, state)) return;
  if (state.shapes.size === 0 || following.stopped === state.history.document) return;
  const forget = state.reports !== following.reports;
  const request = requestOf(state);
  const { asked } = following;
  if (!forget && asked !== undefined && sameRequest(asked.request, request)) return;
  if (!forget && asked !== undefined && !asked.done && state.gesturing && following.now() - asked.at < PATIENCE) {
    // Not forgotten: what comes from the worker, and the next change, look again.
    schedule(following);
    return;
  }
  send(following, request, forget);
}

/** Whether nothing that an evaluation is asked with changed, as most changes of the state show at a glance. */
function isAsked({ asked, reports }: Following, { history: { document }, seen, shown, gesturing, file, shapes, reports: present }: EditorState): boolean {
  const last = asked?.of;
  return last !== undefined && reports === present && last.history.document === document && last.seen === seen && last.shown === shown
    && last.gesturing === gesturing && last.file.name === file.name && last.shapes === shapes;
}

function requestOf({ history: { document }, seen, shown, shapes, gesturing, file }: EditorState): Wanted {
  return { kind: 'evaluate', document, seen, shown: shown ?? mostToShow(document, shapes), whole: !gesturing, graph: file.name };
}

function sameRequest(a: Wanted, b: Wanted): boolean {
  return a.whole === b.whole && a.shown === b.shown && a.graph === b.graph && sameIds(a.seen, b.seen) && sameWork(a.document, b.document);
}

function sameIds(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((id, i) => id === b[i]));
}

function send(following: Following, request: Wanted, forget: boolean): void {
  const { store } = following;
  const revision = next(following);
  if (forget) {
    following.since = revision;
    following.reports = store.getState().reports;
  }
  following.stopped = undefined;
  following.asked = { request, at: following.now(), of: store.getState(), done: false };
  following.send({ ...request, revision, forget });
  store.setState(({ running: { milliseconds } }) => ({ running: { revision, state: 'computing', done: 0, milliseconds } }));
}

/** A new number, known to the worker before any message is. */
function next(following: Following): number {
  following.revision += 1;
  if (following.newest !== undefined) Atomics.store(following.newest, 0, following.revision);
  return following.revision;
}

function cancel(following: Following): void {
  const { store } = following;
  if (store.getState().running.state !== 'computing') return;
  const revision = next(following);
  following.stopped = store.getState().history.document;
  following.asked = undefined;
  following.send({ kind: 'cancel', revision });
  store.setState(({ running: { milliseconds } }) => ({ running: { revision, state: 'cancelled', done: 0, milliseconds } }));
}

/** Messages are gathered until the page is painted: one change of the state for all of them. */
function receive(following: Following, message: FromWorker): void {
  following.inbox.push(message);
  if (following.flushing) return;
  following.flushing = true;
  following.soon(() => {
    following.flushing = false;
    apply(following, following.inbox.splice(0));
  });
}

function apply(following: Following, messages: readonly FromWorker[]): void {
  const { store } = following;
  const state = store.getState();
  const news = messages.filter((message) => !('revision' in message) || message.revision >= following.since);
  const reports = withReports(state, news);
  if (state.reports === following.reports) following.reports = reports;
  else return;
  const picture = stillThere(state, news.findLast((message) => message.kind === 'picture')?.picture ?? state.picture);
  const done = news.filter((message) => message.kind === 'done');
  const outcome = done.findLast((message) => message.outcome !== undefined)?.outcome ?? state.outcome;
  if (done.some(({ revision }) => revision === following.revision) && following.asked) following.asked.done = true;
  store.setState({ reports, picture, outcome, running: runningAfter(following, state, news) });
}

/** The reports with news among them, without those of nodes that are gone; the same object when nothing changes. */
function withReports({ reports, history: { document } }: EditorState, news: readonly FromWorker[]): ReadonlyMap<string, NodeReport> {
  const there = new Set(document.nodes.map(({ id }) => id));
  const fresh = news.flatMap((message) => (message.kind === 'report' && there.has(message.node) ? [[message.node, message.report] as const] : []));
  const gone = [...reports.keys()].some((id) => !there.has(id));
  return fresh.length === 0 && !gone ? reports : new Map([...[...reports].filter(([id]) => there.has(id)), ...fresh]);
}

function stillThere({ history: { document } }: EditorState, picture: EditorState['picture']): EditorState['picture'] {
  return document.nodes.some(({ id }) => id === picture?.node) ? picture : undefined;
}

function runningAfter({ revision }: Following, { running }: EditorState, news: readonly FromWorker[]): EditorState['running'] {
  const own = news.filter((message) => 'revision' in message && message.revision === revision);
  const done = own.findLast((message) => message.kind === 'done');
  if (done !== undefined) return { revision, state: done.cancelled ? 'cancelled' : 'done', done: 1, milliseconds: done.cancelled ? running.milliseconds : done.milliseconds };
  const progress = own.findLast((message) => message.kind === 'progress');
  return progress === undefined ? running : { ...running, node: progress.node, done: progress.done };
}
