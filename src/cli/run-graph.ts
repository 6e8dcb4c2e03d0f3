import type { Catalogue, Evaluation, Evaluator, GraphDocument } from '../runtime/index.ts';
import {
  collectResults, programFiles, type Report, reportOf, type ResultFile, resultPorts, type Results,
} from '../values/index.ts';
import { type Fault, faulty, foundUnless, type Found, placed } from './fault.ts';

/** What one evaluation of a graph hands over: its report, and every file of the results folder (the report included). */
export interface Run {
  readonly report: Report;
  readonly files: readonly ResultFile[];
}

export interface RunOptions {
  /** The graph's name in the report. */
  readonly graph: string;
  readonly draft: boolean;
  readonly onProgress?: (node: string, done: number) => void;
}

const REPORT = 'report.json';

/** Evaluates all that a graph hands over. A node that could not compute is a fault of the graph or of its inputs. */
export async function runGraph(
  document: GraphDocument, catalogue: Catalogue, evaluator: Evaluator, { graph, draft, onProgress }: RunOptions,
): Promise<Found<Run>> {
  const wanted = resultPorts(document, catalogue);
  if (wanted.length === 0)
    return faulty(graph, 'a node that makes results, such as checks, files or programs', 'none', 'Add one to the graph.');
  const evaluation = await evaluator.evaluate(document, wanted, onProgress ? { onProgress } : {});
  const results = collectResults(document, catalogue, evaluation);
  const others = [...results.files, ...programFiles(results, { draft })];
  const faults = [...failureFaults(document, catalogue, results), ...nameFaults(graph, others)];
  return foundUnless(faults, () => {
    const report = reportOf(results, { graph, timings: timingsOf(evaluation), draft });
    return { report, files: [...others, reportFile(report)] };
  });
}

function failureFaults({ nodes }: GraphDocument, catalogue: Catalogue, { failures }: Results): Fault[] {
  const titles = new Map(nodes.map(({ id, type, title }) => [id, title ?? catalogue.get(type)?.title ?? type]));
  return failures.flatMap(({ node, problems }) => problems.map((problem) => placed(problem, `${titles.get(node)} (node ${node})`)));
}

/** Two nodes that write the same file: one would be lost. */
function nameFaults(graph: string, others: readonly ResultFile[]): Fault[] {
  const paths = [...others.map(({ path }) => path), REPORT];
  const twice = new Set(paths.filter((path, i) => paths.indexOf(path) !== i));
  return [...twice].map((path) => ({
    place: graph, expected: 'each result file once', found: `${path} from two nodes`, advice: 'Give one of them another file name.',
  }));
}

function timingsOf({ nodes }: Evaluation): Record<string, number> {
  return Object.fromEntries([...nodes].map(([id, { milliseconds }]) => [id, Math.round(milliseconds * 100) / 100]));
}

function reportFile(report: Report): ResultFile {
  return { path: REPORT, text: `${JSON.stringify(report, null, 2)}\n` };
}
