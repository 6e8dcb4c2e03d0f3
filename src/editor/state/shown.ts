import { type GraphDocument, type Shapes, splitReference } from '../../runtime/index.ts';
import { LAYER_KINDS } from '../../values/layer-kinds.ts';
import type { LayerKind } from '../../values/index.ts';

/** What belongs to the cutting or the tracing of a sign, not to the sign. */
const OF_THE_JOB: ReadonlySet<LayerKind> = new Set(['passes', 'rapids', 'tabs', 'travel', 'tiles', 'seams', 'pins', 'dowels', 'hold-downs', 'supports', 'lit', 'unlit', 'wires', 'image', 'junctions', 'doubts']);

/** The kinds of layer a node's values draw, and how many of those values draw something of the sign. */
interface Drawn {
  readonly kinds: Set<LayerKind>;
  sources: number;
  programs: boolean;
}

/**
 * The node the sheet shows while nobody chose one: the one whose inputs and outputs together draw most kinds of layer of the
 * sign itself; of several the one with most of them, then the first along the wires, which is there soonest. Undefined when no
 * node draws anything.
 */
export function signToShow(document: GraphDocument, shapes: Shapes): string | undefined {
  return best(document, shapes, ({ kinds, sources }) => 1000 * ofTheSign(kinds) + Math.min(sources, 999));
}

/** The node whose programs are played back while the sheet shows one without: of those with programs the one that draws most of the sign. */
export function programsToPlay(document: GraphDocument, shapes: Shapes): string | undefined {
  return best(document, shapes, ({ kinds, programs }) => (programs ? 1 + ofTheSign(kinds) : 0));
}

const ofTheSign = (kinds: ReadonlySet<LayerKind>): number => [...kinds].filter((kind) => !OF_THE_JOB.has(kind)).length;

function best(document: GraphDocument, shapes: Shapes, worth: (drawn: Drawn) => number): string | undefined {
  const drawn = drawnByNode(document, shapes);
  let found: { readonly id: string; readonly worth: number } | undefined;
  for (const id of walkingOrder(document)) {
    const here = worth(drawn.get(id)!);
    if (here > (found?.worth ?? 0)) found = { id, worth: here };
  }
  return found?.id;
}

function drawnByNode({ nodes, wires }: GraphDocument, shapes: Shapes): Map<string, Drawn> {
  const types = new Map(nodes.map(({ id, type }) => [id, type]));
  const all = new Map(nodes.map(({ id }): [string, Drawn] => [id, { kinds: new Set(), sources: 0, programs: false }]));
  const enter = (into: string, id: string, port: string) => {
    const type = shapes.get(types.get(id) ?? '')?.outputs[port]?.type;
    const drawn = all.get(into);
    if (type === undefined || drawn === undefined) return;
    for (const kind of LAYER_KINDS[type]) drawn.kinds.add(kind);
    drawn.sources += LAYER_KINDS[type].some((kind) => !OF_THE_JOB.has(kind)) ? 1 : 0;
    drawn.programs ||= type === 'set-ups';
  };
  for (const [id, type] of types) for (const port of Object.keys(shapes.get(type)?.outputs ?? {})) enter(id, id, port);
  for (const { from, to } of wires) {
    const [source, target] = [splitReference(from), splitReference(to)];
    if (source && target) enter(target.node, source.node, source.name);
  }
  return all;
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
