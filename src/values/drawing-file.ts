import { type Drawing, readDrawing } from '../artwork/index.ts';
import type { FileValue } from '../runtime/params.ts';
import type { Problems } from '../runtime/problem.ts';
import { fileText } from './file-text.ts';

type DrawingFile = { readonly ok: true; readonly drawing: Drawing } | { readonly ok: false; readonly problems: Problems };

/** The drawing in a chosen SVG file, or why there is none. */
export function drawingFile(file: FileValue | null, place: string): DrawingFile {
  const content = fileText(file, place, 'an SVG drawing');
  return content.ok ? readDrawing(content.text) : content;
}
