const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const PAIRS = Array.from({ length: 4096 }, (_, twelve) => ALPHABET[twelve >> 6]! + ALPHABET[twelve & 63]!);

/** Bytes written one after the other into one string before it is joined to others. */
const CHUNK = 3 * 8192;

/** Bytes as padded base64 (RFC 4648 section 4). The core has no encoder of its own at hand. */
export function base64OfBytes(bytes: Uint8Array): string {
  const chunks: string[] = [];
  for (let from = 0; from < bytes.length; from += CHUNK) chunks.push(encodedChunk(bytes.subarray(from, from + CHUNK)));
  return chunks.join('');
}

function encodedChunk(bytes: Uint8Array): string {
  const whole = bytes.length - (bytes.length % 3);
  let text = '';
  for (let at = 0; at < whole; at += 3) {
    const word = (bytes[at]! << 16) | (bytes[at + 1]! << 8) | bytes[at + 2]!;
    text += PAIRS[word >> 12]! + PAIRS[word & 4095]!;
  }
  const rest = bytes.length - whole;
  if (rest === 0) return text;
  const word = (bytes[whole]! << 16) | ((bytes[whole + 1] ?? 0) << 8);
  return `${text}${PAIRS[word >> 12]!}${rest === 2 ? ALPHABET[(word >> 6) & 63]! : '='}=`;
}
