import { edit, editor } from '../state/editor.ts';
import { chooseCards, toggleChosen } from './actions.ts';
import { currentGraph } from './follow.ts';
import type { Gesture } from './gestures.ts';
import { layCards, layWires, shiftCards } from './lie.ts';
import { bench } from './state.ts';
import type { BenchView } from './view.ts';
import { moveSteps } from '../model/steps.ts';

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
    },
    end: (event, moved) => {
      if (moved && ids !== undefined) drop(view, [...ids], ...shift(event));
      else if (adds) toggleChosen(card);
      else chooseCards([card]);
      bench.setState({ focused: card });
    },
    cancel: () => putBack(view, ids ?? new Set()),
  };
}

export function drawShifted(view: BenchView, ids: ReadonlySet<string>, dx: number, dy: number): void {
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
