/** Linear light, 0 to 1, that a code of the display stands for: IEC 61966-2-1. */
export function decoded(code: number): number {
  const share = code / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** By code; rounded, so that engines whose powers differ in their last bit make the same picture. */
const LIGHT = Float64Array.from({ length: 256 }, (_, code) => Math.round(decoded(code) * 1e10) / 1e10);

/** By light in steps: the code at or just under the step's foot, from which to go on upward. */
const STEPS = 4096;
const FLOOR = new Uint8Array(STEPS + 1);
for (let step = 0, code = 0; step <= STEPS; step++) {
  while (code < 255 && LIGHT[code + 1]! <= step / STEPS) code += 1;
  FLOOR[step] = code;
}

/** The code for a light, where `threshold` (0 to 1) decides between the two nearest: with thresholds spread evenly the mean light is kept. */
export function encoded(light: number, threshold: number): number {
  if (!(light > 0)) return 0;
  if (light >= 1) return 255;
  let code = FLOOR[Math.floor(light * STEPS)]!;
  while (LIGHT[code + 1]! <= light) code += 1;
  const share = (light - LIGHT[code]!) / (LIGHT[code + 1]! - LIGHT[code]!);
  return share > threshold ? code + 1 : code;
}

/** Thresholds without a pattern the eye finds: interleaved gradient noise (J. Jimenez, "Next generation post processing", SIGGRAPH 2014). */
export function thresholdAt(x: number, y: number): number {
  return fraction(52.9829189 * fraction(0.06711056 * x + 0.00583715 * y));
}

const fraction = (value: number): number => value - Math.floor(value);
