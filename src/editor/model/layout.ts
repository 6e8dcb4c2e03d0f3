import { Graph, layout } from '@dagrejs/dagre';
import type { GraphDocument, Shapes } from '../../runtime/index.ts';
import { type Places, cardsOf, placeCards } from './arrange.ts';
import { type Box, GAP, type Sizes, around, cardBoxes, freePlace } from './boxes.ts';
import type { Edit } from './history.ts';
import { visibleGraph } from './visible.ts';

/**
 * Lays the cards out from left to right along the wires, none over another; the same graph always in the same way. With ids
 * only those, and clear of the others. The upper left corner stays where it was. Load this module when it is asked for:
 * the layout library is large.
 */
export function layOut(document: GraphDocument, shapes: Shapes, sizes: Sizes = new Map(), ids: readonly string[] = []): Edit {
  const boxes = cardBoxes(document, sizes);
  const some = cardsOf(document, ids).filter((id) => boxes.has(id));
  const chosen = some.length > 0 ? some : [...boxes.keys()];
  const before = around(chosen.map((id) => boxes.get(id)!));
  if (before === undefined) return () => undefined;
  const places = flow(document, shapes, boxes, new Set(chosen));
  const block = around(chosen.map((id) => ({ ...boxes.get(id)!, x: places.get(id)![0], y: places.get(id)![1] })))!;
  const others = [...boxes].filter(([id]) => !places.has(id)).map(([, box]) => box);
  const [x, y] = freePlace(others, { ...block, x: before.x, y: before.y });
  return placeCards(boxes, new Map([...places].map(([id, place]) => [id, [place[0] + x - block.x, place[1] + y - block.y]])));
}

function flow(document: GraphDocument, shapes: Shapes, boxes: ReadonlyMap<string, Box>, chosen: ReadonlySet<string>): Places {
  const graph = new Graph({ multigraph: true });
  graph.setGraph({ rankdir: 'LR', nodesep: GAP.y, edgesep: GAP.y / 2, ranksep: GAP.x, ranker: 'network-simplex' });
  graph.setDefaultEdgeLabel(() => ({}));
  for (const id of chosen) graph.setNode(id, { width: boxes.get(id)!.width, height: boxes.get(id)!.height });
  for (const { key, from, to } of visibleGraph(shapes, document).wires)
    if (chosen.has(from.card) && chosen.has(to.card) && from.card !== to.card) graph.setEdge(from.card, to.card, {}, key);
  layout(graph);
  return new Map([...chosen].map((id) => {
    const { x, y } = graph.node(id) as { x: number; y: number };
    const { width, height } = boxes.get(id)!;
    return [id, [Math.round(x - width / 2), Math.round(y - height / 2)]];
  }));
}
