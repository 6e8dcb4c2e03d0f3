import type { GraphDocument } from '../runtime/document.ts';
import type { Catalogue } from '../runtime/catalogue.ts';
import type { Evaluation, NodeResult } from '../runtime/index.ts';
import type { PortType, PortTypes } from '../runtime/node.ts';
import type { Problem } from '../runtime/problem.ts';
import type { SetUp } from '../machining/job/setup.ts';
import { recipeChecks } from './recipe-checks.ts';
import { type Check, type CheckStatus, type Quantities, type ResultFile, worstStatus } from './check.ts';

/** The kinds of value a run hands over; whatever makes one is evaluated by a run. */
const RESULT_TYPES = ['checks', 'quantities', 'set-ups', 'files'] as const satisfies readonly PortType[];
type ResultType = (typeof RESULT_TYPES)[number];

export interface Failure {
  readonly node: string;
  readonly problems: readonly Problem[];
}

/** All a run hands over, gathered in the order of the graph's nodes. */
export interface Results {
  readonly files: readonly ResultFile[];
  readonly checks: readonly Check[];
  readonly quantities: Quantities;
  readonly setups: readonly SetUp[];
  readonly status: CheckStatus;
  /** Nodes that could not compute, and why; dependants of theirs are not listed. */
  readonly failures: readonly Failure[];
  readonly cautions: readonly Failure[];
}

interface OutputOfNode {
  readonly node: string;
  readonly port: string;
}

/** Every output of the graph that a run must evaluate. */
export function resultPorts(document: GraphDocument, catalogue: Catalogue): OutputOfNode[] {
  return resultOutputs(document, catalogue).map(({ node, port }) => ({ node, port }));
}

/** Gathers what a run hands over from an evaluation of `resultPorts`. */
export function collectResults(document: GraphDocument, catalogue: Catalogue, evaluation: Evaluation): Results {
  const outputs = resultOutputs(document, catalogue);
  const of = <T extends ResultType>(type: T) => valuesOfType(outputs, evaluation, type);
  const checks = [...recipeChecks(document, catalogue).map(({ check }) => check), ...of('checks').flatMap(({ value }) => value)];
  return {
    files: of('files').flatMap(({ value }) => value),
    checks,
    quantities: mergeQuantities(of('quantities')),
    setups: of('set-ups').flatMap(({ value }) => value),
    status: worstStatus(checks),
    failures: told(document, evaluation, (result) => (result.state === 'failed' ? result.problems : [])),
    cautions: told(document, evaluation, (result) => (result.state === 'ready' ? result.cautions : [])),
  };
}

interface ResultOutput extends OutputOfNode {
  readonly type: ResultType;
}

function resultOutputs(document: GraphDocument, catalogue: Catalogue): ResultOutput[] {
  return document.nodes.flatMap(({ id, type: nodeType }) =>
    Object.entries(catalogue.get(nodeType)?.outputs ?? {})
      .flatMap(([port, { type }]) => (isResultType(type) ? [{ node: id, port, type }] : [])));
}

function isResultType(type: PortType): type is ResultType {
  return (RESULT_TYPES as readonly PortType[]).includes(type);
}

function valuesOfType<T extends ResultType>(outputs: readonly ResultOutput[], evaluation: Evaluation, wanted: T): { node: string; value: PortTypes[T] }[] {
  return outputs.filter(({ type }) => type === wanted).flatMap(({ node, port }) => {
    const result = evaluation.nodes.get(node);
    return result?.state === 'ready' ? [{ node, value: result.outputs[port] as PortTypes[T] }] : [];
  });
}

/** Two nodes may state the same quantity: the second keeps its node's id before its name. */
function mergeQuantities(parts: readonly { node: string; value: Quantities }[]): Quantities {
  const merged = new Map<string, Quantities[string]>();
  for (const { node, value } of parts)
    for (const [name, quantity] of Object.entries(value)) merged.set(merged.has(name) ? `${node}.${name}` : name, quantity);
  return Object.fromEntries(merged);
}

/** What nodes have to tell, in the graph's order; nodes with nothing to tell are left out. */
function told(document: GraphDocument, evaluation: Evaluation, pick: (result: NodeResult) => readonly Problem[]): Failure[] {
  return document.nodes.flatMap(({ id }) => {
    const result = evaluation.nodes.get(id);
    const problems = result ? pick(result) : [];
    return problems.length > 0 ? [{ node: id, problems }] : [];
  });
}
