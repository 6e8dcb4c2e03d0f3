import { expect, it } from 'vitest';
import { type GraphDocument, type GraphNode, type NodeResult, createEvaluator } from '../../src/runtime/index.ts';
import { runNode } from '../../src/runtime/execute.ts';
import { seeded } from '../support/random.ts';
import { catalogue, graph } from './arithmetic.ts';

const TYPES = ['constant', 'constant', 'sum', 'split', 'divide', 'broken', 'label'];

/** Evaluates by the definition: every wanted node from its sources, recursively, remembering nothing. */
function naive(document: GraphDocument, id: string): unknown {
  const node = document.nodes.find((candidate) => candidate.id === id)!;
  const declaration = catalogue.get(node.type)!;
  const inputs: Record<string, unknown> = {};
  const wired = (port: string) => document.wires.filter(({ to }) => to === `${id}.${port}`).map(({ from }) => from.split('.') as [string, string]);
  if (Object.entries(declaration.inputs).some(([port, { optional }]) => !optional && wired(port).length === 0)) return 'failed';
  for (const [port, { many }] of Object.entries(declaration.inputs)) {
    const values = wired(port).map(([from, output]) => [naive(document, from), output] as const);
    if (values.some(([result]) => typeof result === 'string')) return 'blocked';
    const plain = values.map(([result, output]) => (result as Record<string, unknown>)[output]);
    inputs[port] = many ? plain : plain[0];
  }
  const result = runNode(declaration, inputs, node.params);
  return result.ok ? result.outputs : 'failed';
}

const told = (result: NodeResult | undefined) => (result?.state === 'ready' ? result.outputs : result?.state);

/** A random change: a value, a node more or less, a wire more or less, places. Wires run from earlier to later nodes only. */
function edit(document: GraphDocument, random: () => number, serial: number): GraphDocument {
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const { nodes, wires } = document;
  const node = pick(nodes);
  const change = (id: string, with_: Partial<GraphNode>) => ({ ...document, nodes: nodes.map((old) => (old.id === id ? { ...old, ...with_ } : old)) });
  const kind = random();
  if (node === undefined || kind < 0.2) return { ...document, nodes: [...nodes, { id: `n${serial}`, type: pick(TYPES)!, position: [0, 0], params: {} }] };
  if (kind < 0.25 && nodes.length > 4) return { ...document, nodes: nodes.filter((old) => old !== node), wires: wires.filter(({ from, to }) => ![from, to].some((end) => end.startsWith(`${node.id}.`))) };
  if (kind < 0.35) return { ...document, wires: wires.filter((wire) => wire !== pick(wires)) };
  if (kind < 0.4) return change(node.id, { position: [random(), random()] });
  if (kind < 0.65) return node.type === 'constant' ? change(node.id, { params: { value: Math.floor(random() * 5) - 1 } }) : node.type === 'label' ? change(node.id, { params: { style: pick(['plain', 'round'])! } }) : document;
  return wireUp(document, node, pick(nodes.slice(0, nodes.indexOf(node))), pick);
}

function wireUp(document: GraphDocument, to: GraphNode, from: GraphNode | undefined, pick: <T>(list: readonly T[]) => T | undefined): GraphDocument {
  const port = pick(Object.entries(catalogue.get(to.type)!.inputs));
  const output = from && pick(Object.entries(catalogue.get(from.type)!.outputs));
  if (port === undefined || output === undefined || output[1].type !== port[1].type) return document;
  const wire = { from: `${from!.id}.${output[0]}`, to: `${to.id}.${port[0]}` };
  const kept = port[1].many ? document.wires.filter((old) => old.from !== wire.from || old.to !== wire.to) : document.wires.filter((old) => old.to !== wire.to);
  return { ...document, wires: [...kept, wire] };
}

it('gives, after any sequence of edits, what evaluating from nothing gives', async () => {
  const random = seeded(20);
  const states = new Map<string, number>();
  let reused = 0;
  for (let sequence = 0; sequence < 25; sequence++) {
    const evaluator = createEvaluator(catalogue);
    let document = graph({});
    for (let step = 0; step < 60; step++) {
      document = edit(document, random, step);
      if (random() < 0.3) continue;
      const asked = document.nodes.filter(() => random() < 0.5);
      const wanted = asked.map(({ id, type }) => ({ node: id, port: Object.keys(catalogue.get(type)!.outputs)[0]! }));
      let questions = Math.floor(random() * 40);
      const { nodes, log, cancelled } = await evaluator.evaluate(document, wanted, { isCancelled: () => --questions === 0 });
      reused += log.filter(({ action }) => action === 'reused').length;
      for (const [id, result] of nodes) {
        expect(told(result), `${id} after step ${step} of sequence ${sequence}`).toEqual(naive(document, id));
        states.set(result.state, (states.get(result.state) ?? 0) + 1);
      }
      if (!cancelled) for (const { id } of asked) expect(nodes.has(id)).toBe(true);
    }
  }
  // The sequences must have led through every state, and through the memory, for the comparison to mean anything.
  expect(Math.min(...['ready', 'failed', 'blocked'].map((state) => states.get(state) ?? 0), reused)).toBeGreaterThan(100);
});

it('executes nothing the second time, after any sequence of edits', async () => {
  const random = seeded(21);
  let document = graph({});
  const evaluator = createEvaluator(catalogue);
  for (let step = 0; step < 150; step++) {
    document = edit(document, random, step);
    const wanted = document.nodes.map(({ id, type }) => ({ node: id, port: Object.keys(catalogue.get(type)!.outputs)[0]! }));
    await evaluator.evaluate(document, wanted);
    const { log } = await evaluator.evaluate(structuredClone(document), wanted);
    expect(log.filter(({ action }) => action === 'executed')).toEqual([]);
  }
});
