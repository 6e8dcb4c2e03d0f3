import type { GraphDocument, Shapes, Wire } from '../../runtime/index.ts';
import { endOf, membersOf, neighboursOf, portAt, reachedFrom, sourceOf, targetOf, wireKey } from './graph.ts';
import type { Edit } from './history.ts';
import { removeSteps } from './steps.ts';
import { lay } from './wiring.ts';

/** Takes steps away and wires what came in straight to what took their results, wherever the types are the same. */
export function removeAndBridge(shapes: Shapes, document: GraphDocument, ids: readonly string[]): { readonly edit: Edit; readonly bridges: readonly Wire[] } {
  const bridges = bridgesOver(shapes, document, ids);
  return {
    bridges,
    edit: (draft) => {
      removeSteps(ids)(draft);
      for (const wire of bridges) lay(shapes, draft, wire);
    },
  };
}

/**
 * The wires that would close the gap. Each comes from an output that leads to the step whose result it stands in for, so it
 * follows a way that was there and can close no circle. Of several the one the fewest steps away, then the first.
 */
export function bridgesOver(shapes: Shapes, document: GraphDocument, ids: readonly string[]): readonly Wire[] {
  const gone = new Set(membersOf(document, ids));
  const inside = document.wires.filter((wire) => gone.has(sourceOf(wire)) && gone.has(targetOf(wire)));
  const before = neighboursOf({ nodes: document.nodes, wires: inside }, true);
  const typeOf = (text: string, side: 'input' | 'output') => {
    const end = endOf(text, side);
    return end && portAt(shapes, document, end)?.type;
  };
  const leaving = document.wires.filter((wire) => gone.has(sourceOf(wire)) && !gone.has(targetOf(wire)));
  const entering = document.wires.filter((wire) => !gone.has(sourceOf(wire)) && gone.has(targetOf(wire)));
  const bridges = leaving.flatMap((wire) => {
    const type = typeOf(wire.to, 'input');
    // A breadth-first walk lists what is nearest first.
    const ranks = [...reachedFrom([sourceOf(wire)], before)];
    const fitting = type === undefined ? [] : entering.filter((other) => typeOf(other.from, 'output') === type && ranks.includes(targetOf(other)));
    const [best] = fitting.sort((a, b) => ranks.indexOf(targetOf(a)) - ranks.indexOf(targetOf(b)));
    return best === undefined ? [] : [{ from: best.from, to: wire.to }];
  });
  const known = new Set(document.wires.map(wireKey));
  return bridges.filter((wire) => !known.has(wireKey(wire)) && known.add(wireKey(wire)));
}
