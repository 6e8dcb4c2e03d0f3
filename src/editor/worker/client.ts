import type { NodeShape } from '../../runtime/index.ts';
import { editor, notify } from '../state/editor.ts';
import { type Evaluating, followState } from '../state/evaluating.ts';
import { type Link, makeLink } from './link.ts';
import type { FromWorker, Question, Questions } from './protocol.ts';

interface Client {
  readonly link: Link;
  readonly evaluating: Evaluating;
  readonly ready: Promise<void>;
}

let client: Client | undefined;

/** Asks the worker something; rejects with a `Problem` when there is no answer. */
export async function ask<Q extends Question>(question: Q, about: Questions[Q]['ask']): Promise<Questions[Q]['answer']> {
  await startWorker();
  if (question === 'files') client!.evaluating.hurry();
  return client!.link.ask(question, about);
}

/** Starts the worker and keeps the state's reports up to date from then on; done once the node types are known. Called again it does no more. */
export function startWorker(): Promise<void> {
  client ??= begin();
  return client.ready;
}

/** Stops what is being computed; the next change of the document computes again. */
export function cancel(): void {
  client?.evaluating.cancel();
}

/** Computes what is not computed yet, also after it was stopped. */
export function recompute(): void {
  client?.evaluating.recompute();
}

/** A worker that dies so often without finishing anything is not started again unasked. */
const MOST_DEATHS = 2;

function begin(): Client {
  const newest = globalThis.crossOriginIsolated ? new Int32Array(new SharedArrayBuffer(4)) : undefined;
  let deaths = 0;
  let known = () => {};
  const ready = new Promise<void>((resolve) => { known = resolve; });
  const restart = () => {
    link.restart();
    link.send({ kind: 'start', newest });
    evaluating.restart();
  };
  const link = makeLink(
    () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
    (message: FromWorker) => {
      if (message.kind === 'done' && !message.cancelled) deaths = 0;
      if (message.kind !== 'ready') return evaluating.receive(message);
      editor.setState({ shapes: shapesOf(message.shapes) });
      known();
    },
    (reason) => {
      deaths += 1;
      tellDeath(reason, deaths < MOST_DEATHS, restart);
      if (deaths < MOST_DEATHS) restart();
      else evaluating.cancel();
    },
  );
  const evaluating = followState({ store: editor, send: link.send, newest, soon: beforePaint, now: () => performance.now() });
  link.send({ kind: 'start', newest });
  return { link, evaluating, ready };
}

function shapesOf(shapes: readonly NodeShape[]): ReadonlyMap<string, NodeShape> {
  return new Map(shapes.map((shape) => [shape.name, shape]));
}

function tellDeath(reason: string, again: boolean, restart: () => void): void {
  const says = `The computation broke off (${reason}). Your document is untouched.`;
  if (again) notify({ kind: 'caution', says: `${says} It was started again.` });
  else notify({ kind: 'failed', says: `${says} Undo the last change, or try once more.`, action: { label: 'Compute again', run: restart } });
}

/** Longest wait for a frame, milliseconds: a page in the background has none. */
const FRAME_AT_MOST = 100;

function beforePaint(call: () => void): void {
  let called = false;
  const once = () => {
    if (called) return;
    called = true;
    cancelAnimationFrame(frame);
    clearTimeout(timer);
    call();
  };
  const frame = requestAnimationFrame(once);
  const timer = setTimeout(once, FRAME_AT_MOST);
}
