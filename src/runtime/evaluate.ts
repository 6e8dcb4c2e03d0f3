import type { Catalogue } from './catalogue.ts';
import { deepEqual } from './deep-equal.ts';
import type { GraphDocument } from './document.ts';
import type { EvaluateOptions, Evaluation, LogEntry, MissingInput, NodeResult } from './evaluation.ts';
import { type Executed, execute } from './execute.ts';
import { watchExecution } from './execution.ts';
import { type Memo, type MemoTable, type Request, type Versions, backdate, createMemoTable } from './memo.ts';
import type { PortType } from './node.ts';
import { type OutputOf, type SoundNode, makePlan } from './plan.ts';
import { nonEmpty } from './problem.ts';

export type * from './evaluation.ts';

export interface EvaluatorOptions {
  /** Whether two values of a port type are the same; `deepEqual` unless given. */
  readonly equal?: (type: PortType, a: unknown, b: unknown) => boolean;
  /** A clock in milliseconds, for timings only; without one all timings are 0. */
  readonly now?: () => number;
}

/**
 * Evaluates documents one after another and remembers results from one to the next. Each call is a new revision. A node is
 * executed only if its type, its parameters or the outputs wired to it differ from those of its remembered results.
 */
export interface Evaluator {
  /**
   * Computes the wanted outputs and what they need. A faulty graph is evaluated as far as it is sound: the nodes at
   * fault fail. Rejects with an Error when a wanted output does not exist. Calls may overlap.
   */
  readonly evaluate: (document: GraphDocument, wanted: readonly OutputOf[], options?: EvaluateOptions) => Promise<Evaluation>;
}

/** Makes an evaluator with an empty memory. */
export function createEvaluator(
  catalogue: Catalogue, { equal = (_type, a, b) => deepEqual(a, b), now = () => 0 }: EvaluatorOptions = {},
): Evaluator {
  const memos = createMemoTable();
  let revision = 0;
  return {
    evaluate: (document, wanted, options = {}) => {
      revision += 1;
      return evaluate({ catalogue, equal, now, memos, revision, options, versions: new Map(), nodes: new Map(), log: [] }, document, wanted);
    },
  };
}

/** One evaluation on its way. */
interface Run extends Required<EvaluatorOptions> {
  readonly catalogue: Catalogue;
  readonly memos: MemoTable;
  readonly revision: number;
  readonly options: EvaluateOptions;
  /** Outputs of the nodes that are ready. */
  readonly versions: Map<string, Versions>;
  readonly nodes: Map<string, NodeResult>;
  readonly log: LogEntry[];
}

async function evaluate(run: Run, document: GraphDocument, wanted: readonly OutputOf[]): Promise<Evaluation> {
  const { nodes, log, options: { isCancelled = () => false } } = run;
  const plan = makePlan(document, run.catalogue, wanted);
  run.memos.retain(new Set(document.nodes.map(({ id }) => id)));
  for (const node of plan) {
    if (isCancelled()) return { cancelled: true, nodes, log };
    if ('problems' in node) settle(run, node.id, { state: 'failed', problems: node.problems, milliseconds: 0 });
    else if (await resolve(run, node) === 'cancelled') return { cancelled: true, nodes, log };
  }
  return { cancelled: false, nodes, log };
}

/** Finds a node's result: blocked, remembered, or by executing it. */
async function resolve(run: Run, node: SoundNode): Promise<'resolved' | 'cancelled'> {
  const missing = nonEmpty(missingInputs(run, node));
  if (missing !== undefined) {
    settle(run, node.id, { state: 'blocked', missing, milliseconds: 0 });
    return 'resolved';
  }
  const request = requestOf(run, node);
  const known = run.memos.find(node.id, request, run.revision);
  const memo = known ?? await pauseAndCompute(run, node, request);
  if (memo === undefined) return 'cancelled';
  if (memo.result.state === 'ready') run.versions.set(node.id, memo.versions);
  run.log.push({ node: node.id, action: known === undefined ? 'executed' : 'reused' });
  settle(run, node.id, memo.result);
  return 'resolved';
}

function settle({ nodes, options }: Run, node: string, result: NodeResult): void {
  nodes.set(node, result);
  options.onResult?.(node, result);
}

function missingInputs({ versions }: Run, { sources }: SoundNode): MissingInput[] {
  return [...sources].flatMap(([port, wired]) =>
    wired.flatMap(({ node }) => (versions.has(node) ? [] : [{ port, from: node }])));
}

function requestOf({ versions }: Run, { sources, params, declaration }: SoundNode): Request {
  const inputs = [...sources].map(([port, wired]) =>
    `${port}: ${wired.map(({ node, port: output }) => `${node}.${output}@${versions.get(node)?.[output]?.changedAt}`).join(' ')}`);
  return { type: declaration.name, params, inputs: inputs.join('; ') };
}

async function pauseAndCompute(run: Run, node: SoundNode, request: Request): Promise<Memo | undefined> {
  const { pause, isCancelled } = run.options;
  if (pause !== undefined) {
    await pause();
    if (isCancelled?.()) return undefined;
  }
  return compute(run, node, request);
}

/** Executes a node and remembers its result; undefined, and nothing remembered, if cancelled meanwhile. */
function compute(run: Run, { id, declaration, sources, params }: SoundNode, request: Request): Memo | undefined {
  const { context, progress, interruption } = watchExecution(run.options, id);
  progress(0);
  const start = run.now();
  const executed = execute(declaration, inputsOf(run, sources, declaration.inputs), params, context);
  const milliseconds = Math.max(0, run.now() - start);
  const interrupted = interruption();
  // Whatever compute made of an interruption, even a result, is not the node's result.
  if (interrupted !== undefined) {
    if (interrupted === 'cancelled') return undefined;
    throw interrupted.thrown;
  }
  const memo = memoOf(run, id, request, executed, milliseconds);
  run.memos.keep(id, memo);
  progress(1);
  return memo;
}

function memoOf(run: Run, id: string, request: Request, executed: Executed, milliseconds: number): Memo {
  const verifiedAt = run.revision;
  if (!executed.ok) return { request, versions: {}, verifiedAt, result: { state: 'failed', problems: executed.problems, milliseconds } };
  const declared = run.catalogue.get(request.type)!.outputs;
  const equal = (port: string, a: unknown, b: unknown) => run.equal(declared[port]!.type, a, b);
  const versions = backdate(executed.outputs, run.memos.earlier(id, request.type), run.revision, equal);
  const outputs = Object.fromEntries(Object.entries(versions).map(([port, { value }]) => [port, value]));
  return { request, versions, verifiedAt, result: { state: 'ready', outputs, cautions: executed.cautions, milliseconds } };
}

function inputsOf({ versions }: Run, sources: SoundNode['sources'], declared: SoundNode['declaration']['inputs']): Readonly<Record<string, unknown>> {
  return Object.fromEntries([...sources].map(([port, wired]) => {
    const values = wired.map(({ node, port: output }) => versions.get(node)?.[output]?.value);
    return [port, declared[port]?.many ? values : values[0]];
  }));
}
