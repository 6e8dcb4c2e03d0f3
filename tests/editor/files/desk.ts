import { IDBFactory } from 'fake-indexeddb';
import { vi } from 'vitest';
import { files } from '../../../src/editor/files/state.ts';
import { resetStorage } from '../../../src/editor/files/storage.ts';
import { keepWork } from '../../../src/editor/files/work.ts';
import { editor, initialState } from '../../../src/editor/state/editor.ts';
import { type NodeDeclaration, makeCatalogue } from '../../../src/runtime/index.ts';
import shipped from '../../../graphs/drawn-strokes.json?raw';

export { shipped };

const catalogue = makeCatalogue(Object.values(import.meta.glob<NodeDeclaration>('../../../nodes/*.ts', { eager: true, import: 'default' })));

export interface Downloaded {
  readonly name: string;
  readonly text: () => Promise<string>;
  readonly bytes: () => Promise<Uint8Array>;
}

/** A page just loaded by a person who was never here: nothing kept, nothing open, every node type known. */
export function freshPage(): { readonly downloads: Downloaded[] } {
  globalThis.indexedDB = new IDBFactory();
  sessionStorage.clear();
  samePage();
  return { downloads: catchDownloads() };
}

/** The same browser after the page was loaded again. */
export function samePage(): void {
  keepWork()();
  resetStorage();
  editor.setState({ ...initialState, shapes: catalogue }, true);
  files.setState({ dialog: undefined, saved: undefined, dragged: undefined, printing: false });
}

function catchDownloads(): Downloaded[] {
  const downloads: Downloaded[] = [];
  let last: Blob;
  URL.createObjectURL = (blob) => {
    last = blob as Blob;
    return 'blob:test';
  };
  URL.revokeObjectURL = () => undefined;
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function click(this: HTMLAnchorElement) {
    const blob = last;
    downloads.push({ name: this.download, text: () => blob.text(), bytes: async () => new Uint8Array(await blob.arrayBuffer()) });
  });
  return downloads;
}

export const file = (name: string, content: string | Uint8Array<ArrayBuffer>): File => new File([content], name);

/** A place on a disk that only this test can see. */
export function diskPlace(name: string, content = ''): FileSystemFileHandle & { content: string; permission: PermissionState } {
  const place = {
    kind: 'file', name, content, permission: 'granted' as PermissionState,
    getFile: () => Promise.resolve(new File([place.content], name)),
    queryPermission: () => Promise.resolve(place.permission),
    requestPermission: () => Promise.resolve(place.permission),
    isSameEntry: (other: unknown) => Promise.resolve(other === place),
    createWritable: () => {
      let written = '';
      return Promise.resolve({
        write: (text: string) => { written += text; return Promise.resolve(); },
        close: () => { place.content = written; return Promise.resolve(); },
        abort: () => Promise.resolve(),
      });
    },
  };
  return place as unknown as FileSystemFileHandle & { content: string; permission: PermissionState };
}

export const notices = (): readonly string[] => editor.getState().notices.map(({ says }) => says);
