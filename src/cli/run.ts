import { createEvaluator } from '../runtime/index.ts';
import type { Given } from './arguments.ts';
import { catalogue } from './catalogue.ts';
import { allFaults, found, type Found } from './fault.ts';
import { readGraphFile } from './graph-file.ts';
import { breathe, interruptible } from './interruption.ts';
import { print, printFaults, printJson } from './output.ts';
import { makeProgress } from './progress.ts';
import { beginResults, tryResults } from './results-folder.ts';
import { type Run, runGraph } from './run-graph.ts';
import { applySettings, settingsOf } from './settings.ts';
import { type ExitStatus, exitStatus } from './status.ts';
import { summary } from './summary.ts';

/** `groovewright run` */
export async function run({ operands: [path], values, switches }: Given): Promise<ExitStatus> {
  const out = values.get('out')?.[0];
  const done = await evaluated(path!, values.get('set') ?? [], { out, draft: switches.has('draft') });
  if (!done.ok) return printFaults(done.faults);
  const written: Found<string | undefined> = out === undefined ? found(undefined) : await writeResults(out, done.value);
  if (!written.ok) return printFaults(written.faults);
  const { report, files } = done.value;
  if (switches.has('json')) printJson(report);
  else print(summary(report, written.value === undefined ? undefined : { path: written.value, files: files.length }));
  return exitStatus(report.status);
}

/** Looks at everything that could be wrong with the call before the long part begins. */
async function evaluated(
  path: string, set: readonly string[], { out, draft }: { out: string | undefined; draft: boolean },
): Promise<Found<Run>> {
  const settings = settingsOf(set);
  const graph = readGraphFile(path, catalogue);
  const writable = out === undefined ? found(undefined) : await interruptible(() => tried(out));
  if (!settings.ok || !graph.ok || !writable.ok) return { ok: false, faults: allFaults([settings, graph, writable]) };
  const { name, document } = graph.value;
  const ready = applySettings(document, catalogue, settings.value, process.cwd());
  if (!ready.ok) return ready;
  const progress = makeProgress();
  const evaluator = createEvaluator(catalogue, { now: () => performance.now() });
  const result = await runGraph(ready.value, catalogue, evaluator, {
    graph: name, draft, onProgress: (node, done) => { progress.show(`${node} ${Math.round(done * 100)} %`, done === 0); },
  });
  progress.clear();
  return result;
}

/** A signal that came meanwhile is served before it is no longer watched for. */
async function tried(out: string): Promise<Found<void>> {
  const outcome = tryResults(out);
  await breathe();
  return outcome;
}

/** Writes a run's files to `out`; gives the folder's absolute path. */
function writeResults(out: string, { files }: Run): Promise<Found<string>> {
  return interruptible(async (undo) => {
    const folder = beginResults(out);
    if (!folder.ok) return folder;
    undo(folder.value.discard);
    for (const file of files) {
      const written = folder.value.write(file);
      if (!written.ok) return written;
      await breathe();
    }
    const committed = folder.value.commit();
    return committed.ok ? found(folder.value.path) : committed;
  });
}
