import { type GraphDocument, type Shapes, splitReference } from '../../runtime/index.ts';
import { LAYER_KINDS } from '../../values/layer-kinds.ts';
import type { LayerKind } from '../../values/index.ts';

/**
 * The node the sheet shows while nobody chose one: the one whose inputs and outputs together draw most kinds of layer; of several
 * the last along the wires. Undefined when no node draws anything.
 */
export function mostToShow(document: GraphDocument, shapes: Shapes): string | undefined {
  const kinds = kindsByNode(document, shapes);
  let best: { readonly id: string; readonly count: number } | undefined;
  for (const id of walkingOrder(document)) {
    const count = kinds.get(id)?.size ?? 0;
    if (count > 0 && count >= (best?.count ?? 0)) best = { id, count };
  }
  return best?.id;
}

function kindsByNode({ nodes, wires }: GraphDocument, shapes: Shapes): Map<string, Set<LayerKind>> {
  const types = new Map(nodes.map(({ id, type }) => [id, type]));
  const drawn = (id: string, port: string): readonly LayerKind[] => {
    const output = shapes.get(types.get(id) ?? '')?.outputs[port];
    return output === undefined ? [] : LAYER_KINDS[output.type];
  };
  const kinds = new Map(nodes.map(({ id, type }) =>
    [id, new Set(Object.keys(shapes.get(type)?.outputs ?? {}).flatMap((port) => drawn(id, port)))]));
  for (const { from, to } of wires) {
    const [source, target] = [splitReference(from), splitReference(to)];
    const set = kinds.get(target?.node ?? '');
    if (source && set) for (const kind of drawn(source.node, source.name)) set.add(kind);
  }
  return kinds;
}

/** Every node after those that lead to it, else in the document's order; nodes of a cycle at the end. */
function walkingOrder({ nodes, wires }: GraphDocument): string[] {
  const order: string[] = [];
  const before = new Map<string, Set<string>>(nodes.map(({ id }) => [id, new Set()]));
  const after = new Map<string, string[]>();
  for (const { from, to } of wires) {
    const [source, target] = [splitReference(from)?.node ?? '', splitReference(to)?.node ?? ''];
    if (!before.has(source) || !before.has(target)) continue;
    before.get(target)!.add(source);
    after.set(source, [...(after.get(source) ?? []), target]);
  }
  const free = nodes.map(({ id }) => id).filter((id) => before.get(id)!.size === 0);
  for (let id = free.shift(); id !== undefined; id = free.shift()) {
    order.push(id);
    for (const next of new Set(after.get(id))) {
      before.get(next)!.delete(id);
      if (before.get(next)!.size === 0) free.push(next);
    }
  }
  const placed = new Set(order);
  return [...order, ...nodes.map(({ id }) => id).filter((id) => !placed.has(id))];
}
