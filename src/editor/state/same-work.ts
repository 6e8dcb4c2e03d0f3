import type { GraphDocument, GraphNode } from '../../runtime/index.ts';

/**
 * Whether computing either document gives the same results and sentences, as far as their parts are the very same objects: moving
 * cards, notes, groups and the document's title make no difference.
 */
export function sameWork(a: GraphDocument, b: GraphDocument): boolean {
  return a === b || (a.wires === b.wires && a.inputs === b.inputs
    && (a.nodes === b.nodes || (a.nodes.length === b.nodes.length && a.nodes.every((node, i) => sameNode(node, b.nodes[i]!)))));
}

function sameNode(a: GraphNode, b: GraphNode): boolean {
  return a === b || (a.id === b.id && a.type === b.type && a.params === b.params && a.title === b.title);
}
