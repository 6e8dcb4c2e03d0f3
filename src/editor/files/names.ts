/** File names as the page makes them. */

/** A name without its folders and its last ending. */
export function baseName(name: string): string {
  const base = name.replace(/^.*[/\\]/, '').replace(/\.[^.]*$/, '');
  return base === '' ? 'untitled' : base;
}

/** A title as a file name that every system takes. */
export function fileNameOf(title: string): string {
  const words = title.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().match(/[\p{L}\p{N}]+/gu)?.join('-').slice(0, 60) ?? '';
  return `${words === '' ? 'untitled' : words}.json`;
}

/** Damaged files are saved beside what is left of them, never over it. */
export const mendedName = (name: string): string => `${baseName(name).replace(/-mended$/, '')}-mended.json`;

export const UNTITLED = 'untitled.json';
