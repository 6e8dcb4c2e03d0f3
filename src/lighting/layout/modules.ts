/** What fits into a length of tube: whole modules, and what stays without light before and after them, the same at both ends. Lengths mm. */
export interface Fitting {
  readonly modules: number;
  readonly cutLength: number;
  readonly unlit: number;
}

/** A module that misses its length by less than this share of it still fits: a drawing rounds. */
const HAIR = 1e-6;

/** The most whole modules that leave at least `leastEnd` at both ends of a tube. */
export function fitModules(length: number, leastEnd: number, moduleLength: number): Fitting {
  const modules = Math.max(0, Math.floor((length - 2 * leastEnd) / moduleLength + HAIR));
  const cutLength = modules * moduleLength;
  return { modules, cutLength, unlit: Math.max(0, (length - cutLength) / 2) };
}
