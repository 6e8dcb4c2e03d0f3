import type { GraphDocument, GraphNode, InputPort, OutputPort, Shapes } from '../../runtime/index.ts';
import { type End, endText, neighboursOf, nodeOf, portAt, portLabel, reachedFrom, titleOf } from './graph.ts';

/** A port that would take, or give, what an end gives or takes. */
export interface FittingPort {
  readonly end: End;
  /** The card it is on, and what it is called there. */
  readonly title: string;
  readonly label: string;
  /** Whether it has no wire yet: an input that takes one loses the one it has. */
  readonly free: boolean;
  /** Canvas units between the two cards' positions. */
  readonly distance: number;
}

/** Every port of the graph that can be wired to this end, nearest card first. */
export function portsThatFit(shapes: Shapes, document: GraphDocument, end: End): readonly FittingPort[] {
  const own = nodeOf(document, end.node);
  const type = portAt(shapes, document, end)?.type;
  if (own === undefined || type === undefined) return [];
  const excluded = reachedFrom([end.node], neighboursOf(document, end.side === 'output'));
  const wired = wiredTo(document, end);
  return document.nodes
    .filter(({ id }) => !excluded.has(id))
    .flatMap((node) => portsOf(shapes, node, end.side).filter(({ port, at }) => port.type === type && !wired.has(at)).map(({ name, port, at }) => ({
      end: { side: opposite(end.side), node: node.id, port: name }, title: titleOf(shapes, node), label: portLabel(name, port.type),
      free: !document.wires.some(({ from, to }) => (end.side === 'output' ? to : from) === at), distance: distanceOf(own, node),
    })))
    .sort((a, b) => a.distance - b.distance);
}

export const opposite = (side: End['side']): End['side'] => (side === 'input' ? 'output' : 'input');

/** The ports of a node on the other side than `side`, which is that of the end to be wired. */
function portsOf(shapes: Shapes, { id, type }: GraphNode, side: End['side']) {
  const shape = shapes.get(type);
  const ports: Readonly<Record<string, InputPort | OutputPort>> = (side === 'output' ? shape?.inputs : shape?.outputs) ?? {};
  return Object.entries(ports).map(([name, port]) => ({ name, port, at: endText({ node: id, port: name }) }));
}

/** What this end is wired to already. */
function wiredTo({ wires }: GraphDocument, end: End): ReadonlySet<string> {
  const at = endText(end);
  return new Set(wires.flatMap(({ from, to }) => (end.side === 'output' ? (from === at ? [to] : []) : to === at ? [from] : [])));
}

const distanceOf = ({ position: [ax, ay] }: GraphNode, { position: [bx, by] }: GraphNode): number => Math.hypot(ax - bx, ay - by);
