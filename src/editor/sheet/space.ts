import type { GraphDocument, Shapes } from '../../runtime/index.ts';
import { splitReference } from '../../runtime/names.ts';

const known = new WeakMap<GraphDocument, { readonly shapes: Shapes; readonly nodes: ReadonlySet<string> }>();

/**
 * Nodes whose values lie on the sheet: those that come after one that makes a sheet. Before that, drawings have
 * coordinates of their own, and a place in them means nothing on the sheet. A graph without any sheet is of one piece.
 */
export function nodesOnSheet(document: GraphDocument, shapes: Shapes): ReadonlySet<string> {
  const last = known.get(document);
  if (last?.shapes === shapes) return last.nodes;
  const nodes = findNodes(document, shapes);
  known.set(document, { shapes, nodes });
  return nodes;
}

function findNodes({ nodes, wires }: GraphDocument, shapes: Shapes): ReadonlySet<string> {
  const makers = nodes.filter(({ type }) => Object.values(shapes.get(type)?.outputs ?? {}).some((port) => port.type === 'stock'));
  if (makers.length === 0) return new Set(nodes.map(({ id }) => id));
  const next = new Map<string, string[]>();
  for (const { from, to } of wires) {
    const [a, b] = [splitReference(from)?.node, splitReference(to)?.node];
    if (a !== undefined && b !== undefined) next.set(a, [...(next.get(a) ?? []), b]);
  }
  const found = new Set<string>();
  const waiting = makers.map(({ id }) => id);
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    waiting.push(...(next.get(id) ?? []));
  }
  return found;
}
