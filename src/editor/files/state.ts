import { createStore } from 'zustand/vanilla';
import { useStore } from 'zustand';
import type { FileValue, GraphDocument, GraphProblem } from '../../runtime/index.ts';
import type { FilePlace } from './artwork.ts';

/** What asks the person something about files, or lists some. */
export type FileDialog =
  | { readonly kind: 'unsaved'; readonly next: () => void | Promise<void> }
  | { readonly kind: 'refused'; readonly name: string; readonly problems: readonly GraphProblem[]; readonly salvage?: { readonly steps: number; readonly open: () => void } }
  | { readonly kind: 'damage' }
  | { readonly kind: 'open'; readonly first: 'recipes' | 'recent' }
  | { readonly kind: 'programs' }
  | { readonly kind: 'results' }
  | { readonly kind: 'which'; readonly file: FileValue; readonly places: readonly FilePlace[] };

export interface FilesState {
  readonly dialog: FileDialog | undefined;
  /** When a document was last saved here, and which. */
  readonly saved: { readonly document: GraphDocument; readonly at: Date } | undefined;
  /** What is being dragged over the page from outside, and the card it is over. */
  readonly dragged: { readonly over: string | undefined } | undefined;
  readonly printing: boolean;
}

export const files = createStore<FilesState>()(() => ({ dialog: undefined, saved: undefined, dragged: undefined, printing: false }));

export const useFiles = <T>(pick: (state: FilesState) => T): T => useStore(files, pick);

export function ask(dialog: FileDialog): void {
  files.setState({ dialog });
}

export function closeDialog(): void {
  files.setState({ dialog: undefined });
}
