import type { Catalogue } from '../runtime/catalogue.ts';
import type { GraphDocument } from '../runtime/document.ts';
import type { Evaluation } from '../runtime/index.ts';
import { type Problem, nonEmpty } from '../runtime/problem.ts';
import type { ResultFile } from './check.ts';
import { type Report, programFiles, reportOf } from './report.ts';
import { type Results, collectResults, resultPorts } from './results.ts';

/** A problem that says where it is. */
export interface PlacedProblem extends Problem {
  readonly place: string;
}

/** What a run hands over: its report, and every file of the results folder (the report included); or all that keeps it from doing so. */
export type HandedOver =
  | { readonly ok: true; readonly report: Report; readonly files: readonly ResultFile[] }
  | { readonly ok: false; readonly problems: readonly [PlacedProblem, ...PlacedProblem[]] };

export interface HandOverOptions {
  /** The graph's name in the report. */
  readonly graph: string;
  readonly draft: boolean;
}

const REPORT = 'report.json';

/** Why a run of this graph could hand over nothing at all. */
export function nothingToRun(document: GraphDocument, catalogue: Catalogue, graph: string): PlacedProblem | undefined {
  return resultPorts(document, catalogue).length > 0 ? undefined
    : { place: graph, expected: 'a node that makes results, such as checks, files or programs', found: 'none', advice: 'Add one to the graph.' };
}

/** Makes all files from an evaluation of `resultPorts`. A node that could not compute is a fault of the graph or of its inputs. */
export function handOver(document: GraphDocument, catalogue: Catalogue, evaluation: Evaluation, { graph, draft }: HandOverOptions): HandedOver {
  const results = collectResults(document, catalogue, evaluation);
  const others = [...results.files, ...programFiles(results, { draft })];
  const problems = nonEmpty([...failureProblems(document, catalogue, results), ...nameProblems(graph, others)]);
  if (problems !== undefined) return { ok: false, problems };
  const report = reportOf(results, { graph, timings: timingsOf(evaluation), draft });
  return { ok: true, report, files: [...others, { path: REPORT, text: `${JSON.stringify(report, null, 2)}\n` }] };
}

function failureProblems({ nodes }: GraphDocument, catalogue: Catalogue, { failures }: Results): PlacedProblem[] {
  const titles = new Map(nodes.map(({ id, type, title }) => [id, title ?? catalogue.get(type)?.title ?? type]));
  return failures.flatMap(({ node, problems }) => problems.map(({ place, expected, found, advice }): PlacedProblem => {
    const where = `${titles.get(node)} (node ${node})`;
    return { place: place ? `${where}, ${place}` : where, expected, found, advice };
  }));
}

/** Two nodes that write the same file: one would be lost. */
function nameProblems(graph: string, others: readonly ResultFile[]): PlacedProblem[] {
  const paths = [...others.map(({ path }) => path), REPORT];
  const twice = new Set(paths.filter((path, i) => paths.indexOf(path) !== i));
  return [...twice].map((path) => ({
    place: graph, expected: 'each result file once', found: `${path} from two nodes`, advice: 'Give one of them another file name.',
  }));
}

function timingsOf({ nodes }: Evaluation): Record<string, number> {
  return Object.fromEntries([...nodes].map(([id, { milliseconds }]) => [id, Math.round(milliseconds * 100) / 100]));
}
