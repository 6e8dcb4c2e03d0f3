import type { FileValue } from '../runtime/params.ts';
import type { Problems } from '../runtime/problem.ts';

type FileText = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly problems: Problems };

/** The text of a chosen file, or why there is none; `what` names the kind of file that was hoped for. */
export function fileText(file: FileValue | null, place: string, what: string): FileText {
  if (file === null) return refused(place, what, 'no file', 'Choose a file.');
  if ('base64' in file) return refused(place, `${what} as UTF-8 text`, `“${file.name}”, which is not UTF-8 text`, 'Save the file as plain, uncompressed UTF-8 text.');
  return { ok: true, text: file.text };
}

function refused(place: string, expected: string, found: string, advice: string): FileText {
  return { ok: false, problems: [{ place, expected, found, advice }] };
}
