/** Code values are looked up in this many steps: finer than 12 bits, and small enough to stay in the cache. */
const STEPS = 16_384;

/** Linear light of an sRGB code value from 0 to 1 (IEC 61966-2-1). */
const linear = (code: number): number => (code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4);

const TABLE = Float32Array.from({ length: STEPS + 1 }, (_, i) => linear(i / STEPS));

/** Linear light of an sRGB code value from 0 to 1. */
export const lightOf = (code: number): number => TABLE[Math.round(code * STEPS)]!;

/**
 * Luma from code values (ITU-R BT.601 weights): the very channel a JPEG keeps at full size, so that coarser colour does not
 * blur what is read from it.
 */
export const luma = (red: number, green: number, blue: number): number => 0.299 * red + 0.587 * green + 0.114 * blue;
