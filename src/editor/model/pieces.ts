import {
  GRAPH_FORMAT, GRAPH_VERSION, type GraphCode, type GraphDocument, type GraphProblem, type GraphProblems, LIMITS, type Shapes, checkGraph, deepEqual, nonEmpty,
  readDamaged, readGraph, writeGraph,
} from '../../runtime/index.ts';
import { linePlace, scanJson } from '../../runtime/json-scan.ts';

const PIECE_FORMAT = 'groovewright-piece';
const PIECE_VERSION = 1;

/** A part of a graph that can be put into another: steps with the wires and groups among them. */
export type Piece = Pick<GraphDocument, 'title' | 'nodes' | 'wires' | 'groups'>;

export type ReadPiece =
  /** `cautions`: faults of single steps, such as an unknown type, which their cards show as the graph's own would. */
  | { readonly ok: true; readonly piece: Piece; readonly cautions: readonly GraphProblem[] }
  | { readonly ok: false; readonly problems: GraphProblems };

/** A piece as text: an envelope around a graph, which is read and brought up to date as graphs are. */
export function writePiece({ title, nodes, wires, groups }: Piece): string {
  const graph = writeGraph({ format: GRAPH_FORMAT, version: GRAPH_VERSION, title, notes: '', nodes, wires, inputs: [], groups });
  return `{ "format": ${JSON.stringify(PIECE_FORMAT)}, "version": ${PIECE_VERSION}, "graph": ${graph.trimEnd()} }\n`;
}

/** Whether a text claims to be a piece, so that a page can tell it from other text that was copied. */
export const isPiece = (text: string): boolean => text.length <= LIMITS.characters && /^\s*\{\s*"format"\s*:\s*"groovewright-piece"/.test(text);

/** Reads a piece, checked as graphs are. */
export function readPiece(text: string, shapes: Shapes): ReadPiece {
  const opened = openEnvelope(text);
  if ('problem' in opened) return { ok: false, problems: [opened.problem] };
  const found = readGraph(opened.graph, shapes);
  if (found.ok) return accepted(found.document, []);
  const sound = soundBut(opened.graph, found.problems, shapes);
  if (sound === undefined || sound.faults.some(({ code }) => !OWN_FAULTS.has(code))) return { ok: false, problems: found.problems };
  return accepted(sound.document, sound.faults.filter(({ code }) => code !== 'missing-input'));
}

/** Faults a single step can have by itself: it goes along with them, and its card tells them. */
const OWN_FAULTS: ReadonlySet<GraphCode> = new Set<GraphCode>([
  'missing-input', 'unknown-node', 'unknown-param', 'wrong-kind', 'not-finite', 'out-of-limits', 'not-offered',
]);

/** The faults a refused text's steps have, and the document, when nothing had to be left out to read it; undefined otherwise. */
function soundBut(text: string, problems: readonly GraphProblem[], shapes: Shapes): { readonly document: GraphDocument; readonly faults: readonly GraphProblem[] } | undefined {
  const { document } = readDamaged(text, shapes);
  const faults = document && checkGraph(document, shapes);
  // Faults of form are those that the document made of the text no longer has.
  return document !== undefined && faults !== undefined && deepEqual(faults, problems) ? { document, faults } : undefined;
}

function accepted({ title, nodes, wires, groups }: GraphDocument, cautions: readonly GraphProblem[]): ReadPiece {
  const empty = nonEmpty<GraphProblem>(nodes.length > 0 ? [] : [{ code: 'wrong-kind', place: 'nodes', expected: 'at least one step', found: 'none', advice: 'Copy some steps first.' }]);
  return empty === undefined ? { ok: true, piece: { title, nodes, wires, groups }, cautions } : { ok: false, problems: empty };
}

type Opened = { readonly graph: string } | { readonly problem: GraphProblem };

/** The text of the graph in the envelope. */
function openEnvelope(text: string): Opened {
  if (text.length > LIMITS.characters)
    return { problem: { code: 'too-large', expected: `at most ${LIMITS.characters} characters`, found: `${text.length}`, advice: 'Copy fewer steps at a time.' } };
  const { fault, repeated: [again] } = scanJson(text, LIMITS.depth + 1);
  if (fault !== undefined) return { problem: notAPiece(linePlace(text, fault.offset), fault.expected, 'other text') };
  if (again !== undefined)
    return { problem: { code: 'duplicate-key', place: linePlace(text, again.offset), expected: 'each key once', found: `"${again.key}" again`, advice: 'Copy the steps again.' } };
  const envelope = JSON.parse(text) as Readonly<Record<string, unknown>> | null;
  if (typeof envelope !== 'object' || envelope?.['format'] !== PIECE_FORMAT) return { problem: notAPiece('format', `"${PIECE_FORMAT}"`, 'something else') };
  const { version, graph } = envelope;
  if (version !== PIECE_VERSION)
    return { problem: { code: 'future-version', place: 'version', expected: `${PIECE_VERSION}`, found: JSON.stringify(version) ?? 'nothing', advice: 'Use a newer release of this program.' } };
  return { graph: JSON.stringify(graph) ?? 'null' };
}

function notAPiece(place: string, expected: string, found: string): GraphProblem {
  return { code: 'wrong-format', place, expected, found, advice: 'Copy steps on the bench first, then paste them.' };
}

/** A group a person kept for other graphs. */
export interface KeptPiece {
  readonly title: string;
  /** As `writePiece` writes it. */
  readonly text: string;
}

/** Where kept pieces are; the page puts its storage in its place. */
export interface PieceStore {
  /** Gives undefined when nothing could be kept. */
  readonly keep: (title: string, text: string) => Promise<unknown>;
  readonly kept: () => Promise<readonly KeptPiece[]>;
}
