import { createEvaluator, type FileValue, makeCatalogue, type NodeDeclaration, readGraph, setInputs } from '../../src/runtime/index.ts';
import { collectResults, programFiles, reportOf, type ResultFile, resultPorts } from '../../src/values/index.ts';

const catalogue = makeCatalogue(Object.values(import.meta.glob<NodeDeclaration>('../../nodes/*.ts', { eager: true, import: 'default' })));

/**
 * What a run of a graph on a drawing hands over, its report without timings among it. Bundled whole by the tests and
 * evaluated in workers of other hosts; touches nothing but the core.
 */
export async function evaluateGraph({ graph, artwork }: { graph: string; artwork: FileValue }): Promise<readonly ResultFile[]> {
  const read = readGraph(graph, catalogue);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const set = setInputs(read.document, catalogue, new Map([['artwork', artwork]]));
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  const evaluation = await createEvaluator(catalogue).evaluate(set.document, resultPorts(set.document, catalogue));
  const results = collectResults(set.document, catalogue, evaluation);
  const report = reportOf(results, { graph: 'drawn-strokes.json', timings: {}, draft: false });
  return [...results.files, ...programFiles(results, { draft: false }), { path: 'report.json', text: `${JSON.stringify(report, null, 2)}\n` }];
}
