import { type Catalogue, type Evaluation, type GraphDocument, type GraphNode, type NodeResult, splitReference } from '../../runtime/index.ts';
import type { Carried } from '../../values/index.ts';

/** A document and the last results its nodes had, some of them of an earlier version of it. */
export interface Desk {
  readonly catalogue: Catalogue;
  readonly document: () => GraphDocument;
  /** Takes a newer version of the document; results of nodes that are gone, or of another type now, are let go. */
  readonly adopt: (document: GraphDocument) => void;
  readonly keep: (node: string, result: NodeResult) => void;
  readonly node: (id: string) => GraphNode | undefined;
  readonly result: (id: string) => NodeResult | undefined;
  /** What leaves a node, in the order of its declaration; nothing unless it is ready. */
  readonly outputs: (id: string) => readonly Carried[];
  /** What reaches a node, by the names of the ports it comes from; wires without a value are left out. */
  readonly inputs: (id: string) => readonly Carried[];
  /** The evaluation of everything a run hands over, if it is finished for the present document. */
  readonly whole: () => Evaluation | undefined;
  readonly finish: (evaluation: Evaluation) => void;
}

interface State {
  document: GraphDocument;
  nodes: ReadonlyMap<string, GraphNode>;
  whole: Evaluation | undefined;
  readonly results: Map<string, { readonly type: string; readonly result: NodeResult }>;
}

export function makeDesk(catalogue: Catalogue, empty: GraphDocument): Desk {
  const state: State = { document: empty, nodes: new Map(), whole: undefined, results: new Map() };
  const node = (id: string) => state.nodes.get(id);
  const result = (id: string) => state.results.get(id)?.result;
  const outputs = (id: string) => outputsOf(catalogue, node(id), result(id));
  return {
    catalogue, node, result, outputs,
    document: () => state.document,
    adopt: (document) => { adopt(state, document); },
    keep: (id, kept) => void state.results.set(id, { type: node(id)?.type ?? '', result: kept }),
    inputs: (id) => inputsOf(state.document, id, outputs),
    whole: () => state.whole,
    finish: (evaluation) => { state.whole = evaluation; },
  };
}

function adopt(state: State, document: GraphDocument): void {
  state.document = document;
  state.nodes = new Map(document.nodes.map((node) => [node.id, node]));
  state.whole = undefined;
  for (const [id, { type }] of state.results) if (state.nodes.get(id)?.type !== type) state.results.delete(id);
}

function outputsOf(catalogue: Catalogue, node: GraphNode | undefined, result: NodeResult | undefined): Carried[] {
  if (node === undefined || result?.state !== 'ready') return [];
  return Object.entries(catalogue.get(node.type)?.outputs ?? {}).map(([port, { type }]) => ({ port, type, value: result.outputs[port] }));
}

function inputsOf({ wires }: GraphDocument, id: string, outputs: (id: string) => readonly Carried[]): Carried[] {
  return wires.flatMap(({ from, to }) => {
    const [source, target] = [splitReference(from), splitReference(to)];
    return target?.node === id && source ? outputs(source.node).filter(({ port }) => port === source.name) : [];
  });
}
