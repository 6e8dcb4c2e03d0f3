/** A PNG file taken apart (ISO/IEC 15948): where its chunks lie, and what its header says. */
export interface Chunk {
  readonly type: string;
  /** Of the data, which its length and type precede and its check sum follows. */
  readonly from: number;
  readonly length: number;
}

export interface PngHeader {
  readonly columns: number;
  readonly rows: number;
  readonly depth: number;
  readonly colour: number;
  readonly interlaced: boolean;
}

const SIGNATURE_LENGTH = 8;

/** Samples per pixel by colour type; a type that is not here does not exist. */
const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

export const channelsOf = ({ colour }: PngHeader): number => CHANNELS[colour] ?? 0;

/** Bytes a pixel takes once unpacked: at least one. */
export const pixelBytes = (header: PngHeader): number => channelsOf(header) * Math.ceil(header.depth / 8);

/** The chunks up to the end chunk; undefined where the file ends before it. */
export function chunksOf(bytes: Uint8Array): readonly Chunk[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: Chunk[] = [];
  for (let at = SIGNATURE_LENGTH; at + 12 <= bytes.length;) {
    const chunk: Chunk = { type: String.fromCharCode(...bytes.subarray(at + 4, at + 8)), from: at + 8, length: view.getUint32(at) };
    if (chunk.from + chunk.length + 4 > bytes.length) return undefined;
    chunks.push(chunk);
    if (chunk.type === 'IEND') return chunks;
    at = chunk.from + chunk.length + 4;
  }
  return undefined;
}

/** The header, from its fixed place at the file's start; undefined where there is none. */
export function headerOf(bytes: Uint8Array): PngHeader | undefined {
  if (bytes.length < 33 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'IHDR') return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { columns: view.getUint32(16), rows: view.getUint32(20), depth: bytes[24]!, colour: bytes[25]!, interlaced: bytes[28] === 1 };
}

const CRITICAL = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);

/** The file with only those chunks that tell its pixels: profiles and notes can be broken, or far larger than they look. */
export function bareOf(bytes: Uint8Array, chunks: readonly Chunk[]): Uint8Array<ArrayBuffer> {
  const kept = chunks.filter(({ type }) => CRITICAL.has(type));
  const bare = new Uint8Array(kept.reduce((sum, { length }) => sum + length + 12, SIGNATURE_LENGTH));
  bare.set(bytes.subarray(0, SIGNATURE_LENGTH));
  let at = SIGNATURE_LENGTH;
  for (const { from, length } of kept) {
    bare.set(bytes.subarray(from - 8, from + length + 4), at);
    at += length + 12;
  }
  return bare;
}
