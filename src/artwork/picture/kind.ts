/** What a file is by its first bytes, whatever its name says. */
export type FileKind = { readonly kind: 'png' | 'jpeg' } | { readonly kind: 'other'; readonly says: string };

/** First bytes, `.` standing for any, of what people take for pictures of these kinds. */
const SIGNATURES: readonly (readonly [string, string])[] = [
  ['GIF8', 'a GIF picture'], ['RIFF....WEBP', 'a WebP picture'], ['%PDF', 'a PDF document'], ['II*\0', 'a TIFF picture'], ['MM\0*', 'a TIFF picture'],
  ['BM', 'a BMP picture'], ['....ftyp', 'a picture or film in a HEIF or MP4 container'], ['8BPS', 'a layered drawing'], ['PK\x03\x04', 'an archive'],
  ['\0\0\x01\0', 'an icon'], ['%!PS', 'a PostScript document'], ['\x00\x00\x00\x0cJXL ', 'a JPEG XL picture'], ['\xff\x0a', 'a JPEG XL picture'],
];

export function kindOf(bytes: Uint8Array): FileKind {
  if (begins(bytes, '\x89PNG\r\n\x1a\n')) return { kind: 'png' };
  if (begins(bytes, '\xff\xd8\xff')) return { kind: 'jpeg' };
  if (begins(bytes, '\x89PNG')) return { kind: 'other', says: 'a PNG picture whose line ends were changed on the way' };
  const known = SIGNATURES.find(([signature]) => begins(bytes, signature));
  return { kind: 'other', says: known?.[1] ?? (bytes.length === 0 ? 'an empty file' : 'something else') };
}

function begins(bytes: Uint8Array, signature: string): boolean {
  return bytes.length >= signature.length && [...signature].every((letter, i) => letter === '.' || bytes[i] === letter.charCodeAt(0));
}
