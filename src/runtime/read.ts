import type { Shapes } from './node.ts';
import { examine } from './check.ts';
import { GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, LIMITS } from './document.ts';
import { type JsonFault, linePlace, scanJson } from './json-scan.ts';
import { migrate } from './migrate.ts';
import { type GraphProblem, type GraphProblems, nonEmpty } from './problem.ts';
import { shapeDocument } from './shape.ts';
import { show } from './show.ts';

export type ReadResult =
  | { readonly ok: true; readonly document: GraphDocument }
  | { readonly ok: false; readonly problems: GraphProblems };

type Raw = Readonly<Record<string, unknown>>;
type Parsed = { readonly raw: Raw } | { readonly fault: GraphProblem };

/**
 * Reads a saved graph: migrates it from older versions, and checks its form and meaning. Refuses it with one problem for
 * each fault. A text that is no JSON, no graph, or larger than `LIMITS` allows gives the first such fault alone, since
 * nothing after it can be judged.
 */
export function readGraph(text: string, catalogue: Shapes): ReadResult {
  const tooLong = checkLength(text);
  if (tooLong !== undefined) return { ok: false, problems: [tooLong] };
  const { fault, repeated } = scanJson(text, LIMITS.depth);
  if (fault !== undefined) return { ok: false, problems: [notJson(text, fault)] };
  const parsed = identify(JSON.parse(text));
  if ('fault' in parsed) return { ok: false, problems: [parsed.fault] };
  const tooLarge = nonEmpty(checkSizes(parsed.raw));
  if (tooLarge !== undefined) return { ok: false, problems: tooLarge };
  const { document, problems, unreadable } = shapeDocument(parsed.raw);
  const all = nonEmpty([
    ...repeated.map(({ offset, key }): GraphProblem =>
      ({ place: linePlace(text, offset), code: 'duplicate-key', expected: 'each key once', found: `${show(key)} again`, advice: 'Remove one of them.' })),
    ...problems,
    ...examine(document, catalogue, unreadable).problems,
  ]);
  return all === undefined ? { ok: true, document } : { ok: false, problems: all };
}

function checkLength({ length }: string): GraphProblem | undefined {
  if (length <= LIMITS.characters) return undefined;
  return { code: 'too-large', expected: `at most ${LIMITS.characters} characters`, found: `${length}`, advice: 'Take large drawings out of the graph.' };
}

function notJson(text: string, { kind, offset, expected }: JsonFault): GraphProblem {
  const found = offset >= text.length ? 'the end of the text' : show(text.slice(offset, offset + 12));
  if (kind === 'too-deep') return { place: linePlace(text, offset), code: 'too-large', expected, found: 'one level more', advice: 'Use a file that this program wrote.' };
  return { place: linePlace(text, offset), code: 'not-json', expected, found, advice: 'Correct the file, or use one that this program wrote.' };
}

/** Makes sure that this is a graph of a version we know, and brings it to the present one. */
function identify(value: unknown): Parsed {
  const raw = typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Raw) : undefined;
  const own = (key: string) => (raw !== undefined && Object.hasOwn(raw, key) ? raw[key] : undefined);
  if (raw === undefined || own('format') !== GRAPH_FORMAT) {
    const found = raw === undefined ? show(value) : show(own('format'));
    return { fault: { place: 'format', code: 'wrong-format', expected: show(GRAPH_FORMAT), found, advice: 'Choose a file that holds a graph.' } };
  }
  const version = own('version');
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    return { fault: { place: 'version', code: 'wrong-version', expected: `a whole number from 0 to ${GRAPH_VERSION}`, found: show(version), advice: 'Use a file that this program wrote.' } };
  if (version > GRAPH_VERSION)
    return { fault: { place: 'version', code: 'future-version', expected: `at most ${GRAPH_VERSION}`, found: `${version}`, advice: 'Open it with a newer release of this program.' } };
  return { raw: migrate(raw, version) };
}

function checkSizes(raw: Raw): GraphProblem[] {
  return (['nodes', 'wires', 'inputs', 'groups'] as const).flatMap((key) => {
    const list = Object.hasOwn(raw, key) ? raw[key] : undefined;
    if (!Array.isArray(list) || list.length <= LIMITS[key]) return [];
    return [{ place: key, code: 'too-large' as const, expected: `at most ${LIMITS[key]}`, found: `${list.length}`, advice: 'Divide the graph into several.' }];
  });
}
