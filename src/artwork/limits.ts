/** How much a drawing may hold. What lies above is refused before it can exhaust memory, time or the call stack. */
export interface Limits {
  /** Length of the text in UTF-8 bytes. */
  readonly bytes: number;
  /** Elements inside one another, in the file and after every `use` is followed. */
  readonly depth: number;
  /** Elements in the file; and, counted apart, elements drawn once every `use` is followed. */
  readonly elements: number;
  /** Points of all paths drawn: starts, ends and control points. */
  readonly points: number;
  /** Times a `use` is followed. */
  readonly uses: number;
  /** Comparisons of a style rule with an element. */
  readonly styleSteps: number;
  /** Greatest distance of a coordinate from the origin, in mm. */
  readonly reach: number;
}

/**
 * Room for any drawing a workshop meets. `depth` bounds recursion (256 levels are far below any call stack);
 * `reach` is one kilometre, where a double still resolves 1e-10 mm.
 */
export const DEFAULT_LIMITS: Limits = {
  bytes: 32 * 1024 * 1024,
  depth: 256,
  elements: 200_000,
  points: 2_000_000,
  uses: 10_000,
  styleSteps: 50_000_000,
  reach: 1_000_000,
};
