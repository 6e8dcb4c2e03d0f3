import type { Catalogue, Evaluator, GraphDocument } from '../runtime/index.ts';
import { handOver, type HandOverOptions, nothingToRun, type Report, type ResultFile, resultPorts } from '../values/index.ts';
import { found, type Found } from './fault.ts';

/** What one evaluation of a graph hands over: its report, and every file of the results folder (the report included). */
export interface Run {
  readonly report: Report;
  readonly files: readonly ResultFile[];
}

export interface RunOptions extends HandOverOptions {
  readonly onProgress?: (node: string, done: number) => void;
}

/** Evaluates all that a graph hands over. */
export async function runGraph(
  document: GraphDocument, catalogue: Catalogue, evaluator: Evaluator, { graph, draft, onProgress }: RunOptions,
): Promise<Found<Run>> {
  const nothing = nothingToRun(document, catalogue, graph);
  if (nothing !== undefined) return { ok: false, faults: [nothing] };
  const evaluation = await evaluator.evaluate(document, resultPorts(document, catalogue), onProgress ? { onProgress } : {});
  const handed = handOver(document, catalogue, evaluation, { graph, draft });
  return handed.ok ? found({ report: handed.report, files: handed.files }) : { ok: false, faults: handed.problems };
}
