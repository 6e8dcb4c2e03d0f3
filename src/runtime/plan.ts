import type { Catalogue } from './catalogue.ts';
import { examine } from './check.ts';
import type { GraphDocument } from './document.ts';
import type { NodeDeclaration } from './node.ts';
import { withDefaults } from './param-values.ts';
import type { AnyParamValues } from './params.ts';
import { type GraphProblem, type GraphProblems, nonEmpty } from './problem.ts';

/** An output of a node of the graph. */
export interface OutputOf {
  readonly node: string;
  readonly port: string;
}

/** A node that can be computed once its sources have values. */
export interface SoundNode {
  readonly id: string;
  readonly declaration: NodeDeclaration;
  readonly params: AnyParamValues;
  /** For every declared input the outputs wired to it, in the order of the wires. */
  readonly sources: ReadonlyMap<string, readonly OutputOf[]>;
}

/** A node that the check of the graph found at fault; it fails without being computed. */
interface FaultyNode {
  readonly id: string;
  readonly problems: GraphProblems;
}

export type PlannedNode = SoundNode | FaultyNode;

/**
 * The nodes needed for the wanted outputs, each after its sources. The order depends on the document alone, not on the
 * order of what is wanted. What a faulty node would need is not needed.
 * Throws an Error when a wanted node or output does not exist: the caller made it up.
 */
export function makePlan(document: GraphDocument, catalogue: Catalogue, wanted: readonly OutputOf[]): readonly PlannedNode[] {
  const nodes = planNodes(document, catalogue);
  for (const { node, port } of wanted) {
    const planned = nodes.get(node);
    const declaration = planned && 'declaration' in planned ? planned.declaration : undefined;
    if (planned === undefined || (declaration && !Object.hasOwn(declaration.outputs, port)))
      throw new Error(`The graph has no output "${node}.${port}" to evaluate.`);
  }
  const targets = new Set(wanted.map(({ node }) => node));
  return sourcesFirst([...nodes.keys()].filter((id) => targets.has(id)), nodes);
}

function planNodes(document: GraphDocument, catalogue: Catalogue): Map<string, PlannedNode> {
  const { problems, links, cycles } = examine(document, catalogue, { nodes: false, wires: false });
  const faults = groupBy(problems.filter(({ code }) => code !== 'cycle'), ({ node }) => node);
  for (const { members, problem } of cycles) for (const id of members) faults.set(id, [...(faults.get(id) ?? []), problem]);
  const linksTo = groupBy(links, ({ to }) => `${to.node}.${to.name}`);
  return new Map(document.nodes.map(({ id, type, params }): [string, PlannedNode] => {
    const declaration = catalogue.get(type);
    const faulty = nonEmpty<GraphProblem>(faults.get(id) ?? []);
    if (faulty !== undefined || declaration === undefined) return [id, { id, problems: faulty! }];
    const sources = Object.keys(declaration.inputs).map((port): [string, OutputOf[]] =>
      [port, (linksTo.get(`${id}.${port}`) ?? []).map(({ from }) => ({ node: from.node, port: from.name }))]);
    return [id, { id, declaration, params: withDefaults(declaration.params, params), sources: new Map(sources) }];
  }));
}

/** Depth first with a stack of its own, so that a chain of any length fits. */
function sourcesFirst(targets: readonly string[], nodes: ReadonlyMap<string, PlannedNode>): PlannedNode[] {
  const order: PlannedNode[] = [];
  const seen = new Set<string>();
  for (const target of targets) {
    const path = seen.has(target) ? [] : [visit(target, nodes, seen)];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const next = top.waiting.pop();
      if (next === undefined) {
        order.push(top.node);
        path.pop();
      } else if (!seen.has(next)) path.push(visit(next, nodes, seen));
    }
  }
  return order;
}

function visit(id: string, nodes: ReadonlyMap<string, PlannedNode>, seen: Set<string>): { node: PlannedNode; waiting: string[] } {
  seen.add(id);
  const node = nodes.get(id)!;
  const waiting = 'sources' in node ? [...node.sources.values()].flat().map((source) => source.node).reverse() : [];
  return { node, waiting };
}

function groupBy<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}
