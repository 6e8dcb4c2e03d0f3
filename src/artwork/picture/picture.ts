import type { ArtworkProblems } from '../problem.ts';

/** A picture as light: row by row from the upper left corner, 0 black, 1 white, linear in what the paper sends back. */
export interface Picture {
  readonly columns: number;
  readonly rows: number;
  readonly light: Float32Array;
  /** What the file says of its own size: pixels per mm across and down. */
  readonly resolution?: Resolution;
}

export interface Resolution {
  readonly across: number;
  readonly down: number;
}

export type PictureReading = { readonly ok: true; readonly picture: Picture } | PictureRefusal;

export interface PictureRefusal {
  readonly ok: false;
  readonly problems: ArtworkProblems;
}

export const refused = (expected: string, found: string, advice: string): PictureRefusal => ({ ok: false, problems: [{ expected, found, advice }] });

/** A file that ends too early or contradicts itself. */
export const damaged = (kind: string, how: string): PictureRefusal =>
  refused(`a whole ${kind} picture`, how, 'The file is damaged: scan or save it again.');
