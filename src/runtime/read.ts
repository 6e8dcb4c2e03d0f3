import type { Shapes } from './node.ts';
import { examine } from './check.ts';
import { GRAPH_FORMAT, GRAPH_VERSION, type GraphDocument, LIMITS } from './document.ts';
import { distinct } from './distinct.ts';
import { type JsonFault, type RepeatedKey, linePlace, mendJson, scanJson } from './json-scan.ts';
import { migrate } from './migrate.ts';
import { type GraphProblem, type GraphProblems, nonEmpty } from './problem.ts';
import { shapeDocument } from './shape.ts';
import { show } from './show.ts';

export type ReadResult =
  | { readonly ok: true; readonly document: GraphDocument }
  | { readonly ok: false; readonly problems: GraphProblems };

/** A graph as far as it could be read, and all that is wrong with it. */
export interface Salvage {
  readonly document?: GraphDocument;
  readonly problems: readonly GraphProblem[];
}

type Raw = Readonly<Record<string, unknown>>;
type Parsed = { readonly raw: Raw } | { readonly fault: GraphProblem };

/**
 * Reads a saved graph: migrates it from older versions, and checks its form and meaning. Refuses it with one problem for
 * each fault. A text that is no JSON, no graph, or larger than `LIMITS` allows gives the first such fault alone, since
 * nothing after it can be judged.
 */
export function readGraph(text: string, catalogue: Shapes): ReadResult {
  const opened = openText(text);
  if (opened.raw === undefined) return { ok: false, problems: opened.problems };
  const { document, problems } = understand(text, opened, catalogue);
  const all = nonEmpty(problems);
  return all === undefined ? { ok: true, document } : { ok: false, problems: all };
}

/**
 * Reads of a saved graph what can be read, with everything that is wrong with it: where the text breaks off or stops being
 * JSON, the part before that place; entries that cannot be read are left out, each told by its place. Node types, ports and
 * parameters that nobody knows are kept as they are. Names that must be unique, or cannot be names, are replaced by ones
 * that can, so that a view may rely on them. There is no document where the text is no graph of a known version.
 */
export function readDamaged(text: string, catalogue: Shapes): Salvage {
  const opened = openText(text);
  if (opened.raw !== undefined) {
    const { document, problems } = understand(text, opened, catalogue);
    return { document: distinct(document), problems };
  }
  const mended = opened.broken ? mendJson(text, LIMITS.depth) : undefined;
  const reopened = mended === undefined ? undefined : openText(mended);
  if (mended === undefined || reopened?.raw === undefined) return { problems: opened.problems };
  const { document, problems } = understand(mended, reopened, catalogue);
  return { document: distinct(document), problems: [...opened.problems, ...problems] };
}

type Opened =
  | { readonly raw: Raw; readonly repeated: readonly RepeatedKey[] }
  /** `broken`: the text is no JSON, though a part of it may be. */
  | { readonly raw?: never; readonly broken: boolean; readonly problems: GraphProblems };

/** The raw graph of a text, of the present version and of a bearable size, or what speaks against it. */
function openText(text: string): Opened {
  const tooLong = checkLength(text);
  if (tooLong !== undefined) return { broken: false, problems: [tooLong] };
  const { fault, repeated } = scanJson(text, LIMITS.depth);
  if (fault !== undefined) return { broken: true, problems: [notJson(text, fault)] };
  const parsed = identify(JSON.parse(text));
  if ('fault' in parsed) return { broken: false, problems: [parsed.fault] };
  const tooLarge = nonEmpty(checkSizes(parsed.raw));
  return tooLarge === undefined ? { raw: parsed.raw, repeated } : { broken: false, problems: tooLarge };
}

function understand(text: string, { raw, repeated }: { readonly raw: Raw; readonly repeated: readonly RepeatedKey[] }, catalogue: Shapes) {
  const { document, problems, unreadable } = shapeDocument(raw);
  const all = [
    ...repeated.map(({ offset, key }): GraphProblem =>
      ({ place: linePlace(text, offset), code: 'duplicate-key', expected: 'each key once', found: `${show(key)} again`, advice: 'Remove one of them.' })),
    ...problems,
    ...examine(document, catalogue, unreadable).problems,
  ];
  return { document, problems: all };
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
