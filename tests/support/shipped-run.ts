import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Evaluation, type FileValue, type GraphDocument, type NodeDeclaration, createEvaluator, makeCatalogue, readGraph, setInputs,
} from '../../src/runtime/index.ts';
import { collectResults, resultPorts } from '../../src/values/index.ts';
import { root } from './command-line.ts';

const nodes = import.meta.glob<NodeDeclaration>('../../nodes/*.ts', { eager: true, import: 'default' });
export const catalogue = makeCatalogue(Object.values(nodes));

type Value = number | string | boolean | FileValue;

/** A shipped graph as it lies in its file. */
export function shippedGraph(name: string): GraphDocument {
  const read = readGraph(readFileSync(join(root, 'graphs', name), 'utf8'), catalogue);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

/** The graph with exposed inputs set. */
export function withInputs(document: GraphDocument, values: Readonly<Record<string, Value>>): GraphDocument {
  const set = setInputs(document, catalogue, new Map(Object.entries(values)));
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  return set.document;
}

/** The graph with one parameter of one node changed, exposed or not. */
export function withParam(document: GraphDocument, node: string, name: string, value: Value): GraphDocument {
  return { ...document, nodes: document.nodes.map((one) => (one.id === node ? { ...one, params: { ...one.params, [name]: value } } : one)) };
}

/** Evaluates graphs one after the other with one memory, as the editor and a batch do. */
export function makeRunner() {
  const evaluator = createEvaluator(catalogue, { now: () => performance.now() });
  return async (document: GraphDocument) => {
    const evaluation = await evaluator.evaluate(document, resultPorts(document, catalogue));
    return { evaluation, results: collectResults(document, catalogue, evaluation) };
  };
}

/** The nodes that were computed, in order. */
export function executed({ log }: Evaluation): string[] {
  return log.filter(({ action }) => action === 'executed').map(({ node }) => node);
}

/** An SVG drawing of pen strokes, 300 x 100 mm unless told otherwise. */
export function penDrawing(body: string, width = 300, height = 100): FileValue {
  return {
    name: 'test.svg',
    text: `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke="black">${body}</svg>`,
  };
}
