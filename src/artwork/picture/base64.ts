const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const SIXTH = new Uint8Array(128);
[...ALPHABET].forEach((letter, i) => { SIXTH[letter.charCodeAt(0)] = i; });

/** The bytes that padded base64 (RFC 4648 section 4) stands for. The core has no decoder of its own at hand. */
export function bytesOfBase64(text: string): Uint8Array<ArrayBuffer> {
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  const sixth = (at: number) => SIXTH[text.charCodeAt(at) & 127]!;
  for (let from = 0, to = 0; from < text.length; from += 4, to += 3) {
    const word = (sixth(from) << 18) | (sixth(from + 1) << 12) | (sixth(from + 2) << 6) | sixth(from + 3);
    // Beyond the end of the array an assignment does nothing: that is where the padding would go.
    bytes[to] = word >> 16;
    bytes[to + 1] = word >> 8;
    bytes[to + 2] = word;
  }
  return bytes;
}
