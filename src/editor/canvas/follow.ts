import { membersOf } from '../model/graph.ts';
import { type EditorState, editor, present, show } from '../state/editor.ts';
import { type BenchGraph, benchGraph } from './bench-graph.ts';
import { layCards, layWires, lie } from './lie.ts';
import { seenBox, viewport } from './state.ts';
import { changesTo, nearestFirst } from './sync.ts';
import type { BenchView } from './view.ts';

/** Cards built at a time, between which the page can answer. */
const SLICE = 16;

/** The graph as the bench shows it now. */
export const currentGraph = (): BenchGraph => benchGraph(present(), editor.getState().shapes);

/** Keeps the view equal to the store's document from now on; returns what ends that. */
export function follow(view: BenchView): () => void {
  const work = { stopped: false, running: false, again: false };
  const settle = async () => {
    if (work.running) {
      work.again = true;
      return;
    }
    work.running = true;
    do {
      work.again = false;
      await bring(view, () => work.again || work.stopped);
    } while (work.again && !work.stopped);
    work.running = false;
  };
  let laid: { readonly graph: BenchGraph; readonly opened: readonly string[] } | undefined;
  const start = () => {
    const now = { graph: currentGraph(), opened: editor.getState().opened };
    // A value that changed moves nothing.
    if (laid?.graph === now.graph && laid.opened === now.opened) return;
    laid = now;
    layCards(now.graph, now.opened);
    layWires(now.graph);
    void settle();
  };
  const unsubscribe = editor.subscribe((state, before) => {
    if (isOther(state, before)) start();
    if (state.chosen !== before.chosen) showChosen(state);
  });
  start();
  return () => {
    work.stopped = true;
    unsubscribe();
  };
}

/** The sheet shows the card chosen last; of a group, its last step. With none chosen the page chooses. */
function showChosen({ chosen, history: { document } }: EditorState): void {
  show(membersOf(document, chosen.slice(-1)).at(-1));
}

const isOther = (a: EditorState, b: EditorState): boolean =>
  a.history.document !== b.history.document || a.shapes !== b.shapes || a.opened !== b.opened;

/** Carries out what the document asks for, until done or overtaken by a newer document. */
async function bring(view: BenchView, overtaken: () => boolean): Promise<void> {
  const graph = currentGraph();
  const changes = changesTo(graph, view.standing());
  for (const key of changes.wiresAway) await view.removeWire(key);
  for (const id of changes.cardsAway) await view.removeCard(id);
  for (const id of changes.cardsMoved) view.place(id, ...graph.cards.get(id)!.at);
  const waiting = new Set(changes.wiresNew);
  await layAcross(view, graph, waiting);
  const order = nearestFirst(changes.cardsNew, lie.getState().boxes, seenBox(viewport.getState()));
  for (let i = 0; i < order.length && !overtaken(); i += SLICE) {
    if (i > 0) await nextTurn();
    if (overtaken()) return;
    for (const id of order.slice(i, i + SLICE)) await view.addCard(id, ...graph.cards.get(id)!.at);
    await layAcross(view, graph, waiting);
    view.publish();
  }
  view.publish();
}

/** Adds the waiting wires whose cards both stand. */
async function layAcross(view: BenchView, graph: BenchGraph, waiting: Set<string>): Promise<void> {
  for (const key of waiting) {
    const { source, target } = graph.wires.get(key)!;
    if (!view.has(source) || !view.has(target)) continue;
    waiting.delete(key);
    await view.addWire(key, source, target);
  }
}

/** Lets the page draw and answer; not bound to frames, which a hidden page has none of. */
const nextTurn = (): Promise<void> => new Promise((resolve) => {
  setTimeout(resolve);
});
