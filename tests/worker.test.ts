import { Worker } from 'node:worker_threads';
import { pathToFileURL } from 'node:url';
import { it } from 'vitest';
import { buildEvaluation, commandLineFiles, expectSameFiles, shippedWork, SMALL_DRAWING } from './support/shipped-graph.ts';

const SCRIPT = `
  import { parentPort, workerData } from 'node:worker_threads';
  const { evaluateGraph } = await import(workerData.module);
  parentPort.postMessage(await evaluateGraph(workerData.work));
`;

it('a worker thread makes the same files as the command line, byte for byte', async () => {
  const module = pathToFileURL(await buildEvaluation('test-thread')).href;
  const script = new URL(`data:text/javascript,${encodeURIComponent(SCRIPT)}`);
  const worker = new Worker(script, { workerData: { module, work: shippedWork(SMALL_DRAWING) } });
  const files = new Promise<{ path: string; text: string }[]>((resolve, reject) => { worker.once('message', resolve).once('error', reject); });
  expectSameFiles(await files, await commandLineFiles('test-thread-cli', SMALL_DRAWING));
  await worker.terminate();
}, 120_000);
