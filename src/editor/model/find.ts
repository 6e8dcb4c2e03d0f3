import { type NodeShape, type Shapes, nearest, summaryOf } from '../../runtime/index.ts';
import { type End, portLabel } from './graph.ts';
import { opposite } from './fitting.ts';
import type { KeptPiece } from './pieces.ts';

/** Something that can be added to a graph. */
export type Found =
  | {
      readonly kind: 'type';
      /** Name of the type. */
      readonly type: string;
      readonly title: string;
      /** First sentence of its doc. */
      readonly says: string;
      /** The port that takes, or gives, what was asked for, and how a card calls it. */
      readonly port?: { readonly name: string; readonly label: string };
    }
  | { readonly kind: 'piece'; readonly title: string; readonly says: string; readonly piece: KeptPiece };

/** What may be found: declared types, and pieces that were kept. */
export interface Offered {
  readonly shapes: Shapes;
  readonly pieces?: readonly KeptPiece[];
}

/** An end to be wired, and the type of value it gives or takes. */
export interface Wanted {
  readonly side: End['side'];
  readonly type: string;
}

/**
 * Steps to add, best first, for words as typed; every word must be found. A title counts more than a name, that more than a
 * port, that more than the doc; the beginning of a word more than its inside. With `fits` only types with a port for that end.
 * Without words everything, by title. When nothing is found, what a mistyped word most likely means.
 */
export function findSteps({ shapes, pieces = [] }: Offered, query: string, fits?: Wanted): readonly Found[] {
  const words = wordsOf(query);
  const types = [...shapes.values()].flatMap((shape) => typeEntry(shape, fits));
  const entries = fits === undefined ? [...types, ...pieces.map(pieceEntry)] : types;
  const found = ranked(entries, words);
  return found.length > 0 ? found : ranked(entries, words.map((word) => mended(word, entries)));
}

/** Which port of a type an end would be wired to: a required input before an optional one. */
function portThatFits({ inputs, outputs }: NodeShape, { side, type }: Wanted): string | undefined {
  if (opposite(side) === 'output') return Object.entries(outputs).find(([, port]) => port.type === type)?.[0];
  const fitting = Object.entries(inputs).filter(([, port]) => port.type === type);
  return (fitting.find(([, port]) => port.optional !== true) ?? fitting[0])?.[0];
}

interface Entry {
  readonly found: Found;
  /** Texts to look in, with what a word found in them counts. */
  readonly fields: readonly { readonly words: readonly string[]; readonly weight: number }[];
}

const WEIGHTS = { title: 8, name: 6, ports: 3, doc: 1 } as const;

function typeEntry(shape: NodeShape, fits: Wanted | undefined): Entry[] {
  const port = fits && portThatFits(shape, fits);
  if (fits !== undefined && port === undefined) return [];
  const { name, title, doc, inputs, outputs, params } = shape;
  const ports = Object.entries({ ...inputs, ...outputs }).flatMap(([key, { type }]) => [portLabel(key, type), type]);
  const told = [doc, ...Object.values({ ...inputs, ...outputs, ...params }).map((part) => part.doc), ...Object.values(params).map(({ label }) => label)];
  const declared = port === undefined ? undefined : (fits?.side === 'output' ? inputs : outputs)[port];
  return [{
    found: {
      kind: 'type', type: name, title, says: summaryOf(shape),
      ...(port !== undefined && { port: { name: port, label: portLabel(port, declared?.type) } }),
    },
    fields: [
      { words: wordsOf(title), weight: WEIGHTS.title }, { words: wordsOf(name), weight: WEIGHTS.name },
      { words: wordsOf(ports.join(' ')), weight: WEIGHTS.ports }, { words: wordsOf(told.join(' ')), weight: WEIGHTS.doc },
    ],
  }];
}

function pieceEntry(piece: KeptPiece): Entry {
  return {
    found: { kind: 'piece', title: piece.title, says: 'A group that was kept.', piece },
    fields: [{ words: wordsOf(piece.title), weight: WEIGHTS.title }, { words: ['kept', 'group', 'piece'], weight: WEIGHTS.doc }],
  };
}

/** Lower-case words without marks or hyphens. */
function wordsOf(text: string): string[] {
  return text.normalize('NFKD').toLowerCase().split(/[^\p{L}\p{M}\p{N}]+/u).map((word) => word.replace(/\p{M}/gu, '')).filter((word) => word !== '');
}

function ranked(entries: readonly Entry[], words: readonly string[]): Found[] {
  return entries
    .map((entry) => ({ found: entry.found, score: scoreOf(entry, words) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score || byText(a.found.title, b.found.title))
    .map(({ found }) => found);
}

/** 0 when a word is found nowhere; 1 when there are no words. */
function scoreOf({ fields }: Entry, words: readonly string[]): number {
  const scores = words.map((word) => fields.reduce((best, field) => Math.max(best, field.weight * closeness(field.words, word, field.weight > WEIGHTS.doc)), 0));
  const whole = fields.some((field) => field.weight > WEIGHTS.ports && words.join(' ') === field.words.join(' '));
  return scores.includes(0) ? 0 : 1 + scores.reduce((sum, score) => sum + score, 0) + (whole ? WHOLE : 0);
}

/** What it counts when the words are a whole title or name: more than any title they are only a part of. */
const WHOLE = 1000;

/** How well a word is met: whole, as a beginning or in the plural, inside. Running text has every short word inside another. */
function closeness(words: readonly string[], word: string, inside: boolean): number {
  if (words.includes(word)) return 4;
  if (words.some((candidate) => candidate.startsWith(word) || word === `${candidate}s`)) return 3;
  return inside && word.length > 2 && words.some((candidate) => candidate.includes(word)) ? 1 : 0;
}

/** The word itself when it is found somewhere, else the known word it most likely means. */
function mended(word: string, entries: readonly Entry[]): string {
  const known = new Set(entries.flatMap(({ fields }) => fields.flatMap((field) => field.words)));
  return closeness([...known], word, true) > 0 ? word : nearest(word, known) ?? word;
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
