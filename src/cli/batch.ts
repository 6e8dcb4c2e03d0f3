import { listInputs, nonEmpty } from '../runtime/index.ts';
import type { Given } from './arguments.ts';
import { runRows } from './batch-pool.ts';
import { batchJson, batchText, rowSummary, type RowSummary, summaryFile } from './batch-summary.ts';
import { type BatchTable, checkTable, rowFolder } from './batch-table.ts';
import { catalogue } from './catalogue.ts';
import { allFaults, type Fault, found, type Found } from './fault.ts';
import { type GraphFile, readGraphFile } from './graph-file.ts';
import { interruptible } from './interruption.ts';
import { print, printFaults, printJson } from './output.ts';
import { makeProgress } from './progress.ts';
import { beginResults, type ResultsFolder } from './results-folder.ts';
import type { Run } from './run-graph.ts';
import { type ExitStatus, exitStatus } from './status.ts';

/** `groovewright batch` */
export async function batch({ operands: [graphPath, tablePath], values, switches }: Given): Promise<ExitStatus> {
  const graph = readGraphFile(graphPath!, catalogue);
  const inputs = graph.ok ? listInputs(graph.value.document, catalogue).map(({ name }) => name) : undefined;
  const table = await checkTable(tablePath!, inputs);
  const done = await interruptible(async (undo): Promise<Found<Done>> => {
    const folder = beginResults(values.get('out')![0]!);
    if (folder.ok) undo(folder.value.discard);
    if (graph.ok && table.ok && folder.ok) return runInto(folder.value, graph.value, table.value, switches.has('draft'));
    if (folder.ok) folder.value.discard();
    return { ok: false, faults: allFaults([graph, table, folder]) };
  });
  if (!done.ok) return printFaults(done.faults);
  const { graph: name, rows, path } = done.value;
  if (switches.has('json')) printJson(batchJson(name, rows));
  else print(batchText(rows, path));
  return told(rows);
}

interface Done {
  readonly graph: string;
  readonly rows: readonly RowSummary[];
  /** The folder of results. */
  readonly path: string;
}

/** Runs all rows and writes what they hand over; nothing is left when the disk fails, or when no row could be run. */
async function runInto(folder: ResultsFolder, graph: GraphFile, table: BatchTable, draft: boolean): Promise<Found<Done>> {
  const rows: RowSummary[] = [];
  const broken: Fault[] = [];
  const progress = makeProgress();
  await runRows({ graph: graph.name, document: graph.document, table, draft }, (row, run) => {
    if (broken.length > 0) return false;
    const name = rowFolder(table, row);
    const written = run.ok ? writeRow(folder, name, run.value) : found(undefined);
    if (!written.ok) broken.push(...written.faults);
    rows.push(rowSummary(row, name, run));
    progress.show(`${rows.length} of ${table.count} rows`);
    return written.ok;
  });
  progress.clear();
  rows.sort((a, b) => a.row - b.row);
  if (broken.length === 0 && rows.every(({ status }) => status === 'wrong')) broken.push(...rows.flatMap(({ faults }) => faults));
  const faults = nonEmpty(broken);
  if (faults) {
    folder.discard();
    return { ok: false, faults };
  }
  const written = folder.write(summaryFile(rows));
  const ended = written.ok ? folder.commit() : written;
  return ended.ok ? found({ graph: graph.name, rows, path: folder.path }) : ended;
}

function writeRow(folder: ResultsFolder, name: string, { files }: Run): Found<void> {
  for (const file of files) {
    const written = folder.write({ ...file, path: `${name}/${file.path}` });
    if (!written.ok) return written;
  }
  return found(undefined);
}

/** A wrong row outranks a failed check. */
function told(rows: readonly RowSummary[]): ExitStatus {
  const faults = nonEmpty(rows.flatMap((row) => row.faults));
  if (faults) return printFaults(faults);
  return exitStatus(rows.some(({ status }) => status === 'fail') ? 'fail' : 'pass');
}
