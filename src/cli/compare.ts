import { type Change, createEvaluator, documentChanges } from '../runtime/index.ts';
import { type FigureChange, type Report, reportChanges } from '../values/index.ts';
import type { Given } from './arguments.ts';
import { catalogue } from './catalogue.ts';
import { allFaults, found, type Found } from './fault.ts';
import { changeLines, figureLines } from './compare-words.ts';
import { type GraphFile, readGraphFile } from './graph-file.ts';
import { print, printFaults, printJson } from './output.ts';
import { makeProgress } from './progress.ts';
import { runGraph } from './run-graph.ts';
import type { ExitStatus } from './status.ts';

/** `groovewright compare` */
export async function compare({ operands: [one, other], switches }: Given): Promise<ExitStatus> {
  const [a, b] = [readGraphFile(one!, catalogue), readGraphFile(other!, catalogue)];
  if (!a.ok || !b.ok) return printFaults(allFaults([a, b]));
  const changes = documentChanges(a.value.document, b.value.document, catalogue);
  const reports = await reportsOf(a.value, b.value);
  if (!reports.ok) return printFaults(reports.faults);
  const results = reportChanges(...reports.value);
  if (switches.has('json')) printJson({ graph: changes, results });
  else print(asText([one!, other!], changes, results));
  return 0;
}

/** Both graphs run one after the other with one memory: what they have alike is computed once. */
async function reportsOf(a: GraphFile, b: GraphFile): Promise<Found<readonly [Report, Report]>> {
  const progress = makeProgress();
  const evaluator = createEvaluator(catalogue, { now: () => performance.now() });
  const reportOf = async ({ name, document }: GraphFile) => {
    const run = await runGraph(document, catalogue, evaluator, { graph: name, draft: false, onProgress: (node, done) => { progress.show(`${name}: ${node} ${Math.round(done * 100)} %`, done === 0); } });
    return run.ok ? found(run.value.report) : run;
  };
  const first = await reportOf(a);
  const second = first.ok ? await reportOf(b) : first;
  progress.clear();
  return first.ok && second.ok ? found([first.value, second.value]) : { ok: false, faults: allFaults([first, second === first ? found(undefined) : second]) };
}

function asText([one, other]: readonly [string, string], changes: readonly Change[], results: readonly FigureChange[]): string {
  const figures = figureLines(results);
  return [
    `From ${one} to ${other}`, '',
    changes.length === 0 ? 'The graphs say the same.' : 'In the graph', ...changeLines(changes), '',
    figures.length === 0 ? 'The results are the same.' : 'In the results', ...figures,
  ].join('\n');
}
