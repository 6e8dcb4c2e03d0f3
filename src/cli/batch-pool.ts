import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type BatchRow, type BatchTable, rowPlace, rowsOf } from './batch-table.ts';
import type { BatchWork } from './batch-worker.ts';
import { faulty, type Found } from './fault.ts';
import type { Run } from './run-graph.ts';

/**
 * Runs every row on as many threads as the machine has cores and hands each result over as it comes. At most one row a
 * thread is in memory. Stops early when `take` returns false.
 */
export async function runRows(work: BatchWork, take: (row: BatchRow, run: Found<Run>) => boolean): Promise<void> {
  const rows = rowsOf(work.table);
  const lane = async () => {
    let worker: Worker | undefined;
    for (let next = await rows.next(); !next.done; next = await rows.next()) {
      worker ??= startWorker(work);
      const run = await ask(worker, next.value);
      if (run === undefined) worker = undefined;
      if (!take(next.value, run ?? lost(work.table, next.value))) await rows.return(undefined);
    }
    await worker?.terminate();
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), work.table.count) }, lane));
}

/** The built worker stands beside the built command line. */
function startWorker(work: BatchWork): Worker {
  return new Worker(new URL('batch-worker.js', import.meta.url), { workerData: work });
}

/** A thread that dies (out of memory, say) costs its row, not the batch: its answer is undefined. */
function ask(worker: Worker, row: BatchRow): Promise<Found<Run> | undefined> {
  return new Promise((resolve) => {
    const answer = (run?: Found<Run>) => {
      worker.off('message', answer).off('error', dead).off('exit', dead);
      resolve(run);
    };
    const dead = () => { answer(); };
    worker.on('message', answer).on('error', dead).on('exit', dead);
    worker.postMessage(row);
  });
}

function lost(table: BatchTable, row: BatchRow): Found<Run> {
  return faulty(rowPlace(table.path, row), 'a row that can be computed', 'a computation that broke off', 'Run this row alone; if it breaks off again, report it.');
}
