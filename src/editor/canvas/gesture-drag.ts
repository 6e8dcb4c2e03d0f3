import { insertOnWire } from '../model/inserting.ts';
import { moveSteps } from '../model/steps.ts';
import { edit, editor, present } from '../state/editor.ts';
import { chooseCards, toggleChosen } from './actions.ts';
import { currentGraph } from './follow.ts';
import type { Gesture } from './gestures.ts';
import { cardSizes, layCards, layWires, lie, shiftCards } from './lie.ts';
import { announce, bench } from './state.ts';
import type { BenchView } from './view.ts';
import { type Spot, isNear } from './wire-path.ts';

/** Cards follow the pointer: the pressed one, with the other chosen ones when it is chosen. The document changes once, at the end. */
export function beginDrag(view: BenchView, card: string, start: PointerEvent): Gesture {
  const adds = start.shiftKey || start.ctrlKey || start.metaKey;
  let ids: ReadonlySet<string> | undefined;
  const take = (): ReadonlySet<string> => {
    if (!editor.getState().chosen.includes(card)) chooseCards(adds ? [...editor.getState().chosen, card] : [card]);
    return new Set(editor.getState().chosen);
  };
  const shift = ({ clientX, clientY }: Pick<PointerEvent, 'clientX' | 'clientY'>): readonly [number, number] =>
    [Math.round((clientX - start.clientX) / view.zoom), Math.round((clientY - start.clientY) / view.zoom)];
  return {
    move: (event) => {
      ids ??= take();
      drawShifted(view, ids, ...shift(event));
      markTarget(ids.size === 1 ? wireBelow(view.spotAt(event.clientX, event.clientY), card) : undefined);
    },
    end: (event, moved) => {
      const { target } = bench.getState();
      markTarget(undefined);
      if (moved && ids !== undefined && target !== undefined) putOnWire(view, target, card, shift(event));
      else if (moved && ids !== undefined) drop(view, [...ids], ...shift(event));
      else if (adds) toggleChosen(card);
      else chooseCards([card]);
      bench.setState({ focused: card });
    },
    cancel: () => {
      markTarget(undefined);
      putBack(view, ids ?? new Set());
    },
  };
}

function markTarget(target: string | undefined): void {
  if (bench.getState().target !== target) bench.setState({ target });
}

/** The wire below the pointer that the dragged card could be put into. */
function wireBelow(spot: Spot, card: string): string | undefined {
  const near = [...lie.getState().turns].filter(([, turns]) => isNear(turns, spot, REACH)).map(([key]) => key);
  return near.find((key) => insertionOf(key, card)?.ok);
}

/** How near to a wire, in bench units, a dragged card's pointer must come to be put into it. */
const REACH = 10;

function insertionOf(key: string, card: string) {
  const wire = currentGraph().wires.get(key);
  if (wire === undefined || wire.source === card || wire.target === card || currentGraph().cards.get(card)?.kind !== 'node') return undefined;
  return insertOnWire(editor.getState().shapes, present(), wire.wire, { id: card }, cardSizes());
}

function putOnWire(view: BenchView, key: string, card: string, [dx, dy]: readonly [number, number]): void {
  const insertion = insertionOf(key, card);
  if (insertion?.ok !== true) {
    drop(view, [card], dx, dy);
    return;
  }
  edit('put a step into a wire', insertion.edit);
  announce('Step put into the wire.');
}

function drawShifted(view: BenchView, ids: ReadonlySet<string>, dx: number, dy: number): void {
  const graph = currentGraph();
  shiftCards(graph, ids, dx, dy);
  for (const id of ids) {
    const at = graph.cards.get(id)?.at;
    if (at !== undefined) view.place(id, at[0] + dx, at[1] + dy);
  }
}

function drop(view: BenchView, ids: readonly string[], dx: number, dy: number): void {
  if (dx === 0 && dy === 0) putBack(view, new Set(ids));
  else edit(ids.length === 1 ? 'move a step' : `move ${ids.length} steps`, moveSteps(ids, dx, dy));
}

/** Draws cards where the document has them. */
function putBack(view: BenchView, ids: ReadonlySet<string>): void {
  drawShifted(view, ids, 0, 0);
  layCards(currentGraph(), editor.getState().opened);
  layWires(currentGraph());
}
