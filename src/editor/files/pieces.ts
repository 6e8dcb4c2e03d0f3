import { forget, keep, recall, recallAll } from './storage.ts';

/** Steps put by for later recipes, as the text that copying them gives. */
export interface Piece {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly when: number;
}

const KEY = 'piece:';

/** Undefined when the browser keeps nothing; then the person has been told. */
export async function keepPiece(title: string, text: string): Promise<Piece | undefined> {
  const piece: Piece = { id: crypto.randomUUID(), title, text, when: Date.now() };
  return (await keep(KEY + piece.id, piece)) ? piece : undefined;
}

/** By title, the newest of one title first. */
export async function keptPieces(): Promise<readonly Piece[]> {
  const pieces = (await recallAll<Piece>(KEY)).map(([, piece]) => piece);
  return pieces.sort((a, b) => a.title.localeCompare(b.title, 'en') || b.when - a.when);
}

export async function renamePiece(id: string, title: string): Promise<void> {
  const piece = await recall<Piece>(KEY + id);
  if (piece !== undefined) await keep(KEY + id, { ...piece, title });
}

export const removePiece = (id: string): Promise<void> => forget(KEY + id);
