import type { GraphDocument, Shapes } from '../../runtime/index.ts';
import { splitReference } from '../../runtime/names.ts';

const known = new WeakMap<GraphDocument, { readonly shapes: Shapes; readonly nodes: ReadonlySet<string> }>();

/** Nodes that make a sheet. */
export const sheetMakers = ({ nodes }: GraphDocument, shapes: Shapes): readonly string[] =>
  nodes.filter(({ type }) => Object.values(shapes.get(type)?.outputs ?? {}).some((port) => port.type === 'stock')).map(({ id }) => id);

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

function findNodes(document: GraphDocument, shapes: Shapes): ReadonlySet<string> {
  const makers = sheetMakers(document, shapes);
  return new Set(makers.length === 0 ? document.nodes.map(({ id }) => id) : nodesAfter(document, makers));
}

/** The nodes given and all that anything of theirs reaches. */
export function nodesAfter({ wires }: GraphDocument, first: readonly string[]): ReadonlySet<string> {
  const next = new Map<string, string[]>();
  for (const { from, to } of wires) {
    const [a, b] = [splitReference(from)?.node, splitReference(to)?.node];
    if (a !== undefined && b !== undefined) next.set(a, [...(next.get(a) ?? []), b]);
  }
  const found = new Set<string>();
  const waiting = [...first];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    waiting.push(...(next.get(id) ?? []));
  }
  return found;
}
