import { basename } from 'node:path';
import { type Catalogue, type GraphDocument, type GraphProblem, readGraph } from '../runtime/index.ts';
import { found, type Found, placed } from './fault.ts';
import { readText } from './read-file.ts';

export interface GraphFile {
  /** The file's name without its folders. */
  readonly name: string;
  readonly document: GraphDocument;
}

/** Reads and checks a saved graph. */
export function readGraphFile(path: string, catalogue: Catalogue): Found<GraphFile> {
  const text = readText(path, path);
  if (!text.ok) return text;
  const read = readGraph(text.value, catalogue);
  if (read.ok) return found({ name: basename(path), document: read.document });
  const at = (problem: GraphProblem) => placed(problem, problem.node === undefined ? path : `${path}, node ${problem.node}`);
  const [first, ...rest] = read.problems;
  return { ok: false, faults: [at(first), ...rest.map(at)] };
}
