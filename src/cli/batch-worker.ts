import { dirname } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { createEvaluator, type GraphDocument } from '../runtime/index.ts';
import { type BatchRow, type BatchTable, rowPlace, rowSettings } from './batch-table.ts';
import { catalogue } from './catalogue.ts';
import { type Found, placed } from './fault.ts';
import { type Run, runGraph } from './run-graph.ts';
import { applySettings } from './settings.ts';

/** What every worker of a batch is given once. */
export interface BatchWork {
  readonly graph: string;
  readonly document: GraphDocument;
  readonly table: BatchTable;
  readonly draft: boolean;
}

const { graph, document, table, draft } = workerData as BatchWork;
/** Kept from row to row: what a row has in common with the one before is not computed again. */
const evaluator = createEvaluator(catalogue, { now: () => performance.now() });

async function runRow(row: BatchRow): Promise<Found<Run>> {
  const settings = rowSettings(table, row);
  if (!settings.ok) return settings;
  const set = applySettings(document, catalogue, settings.value, dirname(table.path));
  if (!set.ok) return set;
  const run = await runGraph(set.value, catalogue, evaluator, { graph, draft });
  if (run.ok) return run;
  const [first, ...rest] = run.faults;
  const place = rowPlace(table.path, row);
  const at = (fault: typeof first) => placed(fault, place);
  return { ok: false, faults: [at(first), ...rest.map(at)] };
}

parentPort!.on('message', (row: BatchRow) => {
  void runRow(row).then((run) => { parentPort!.postMessage(run); });
});
