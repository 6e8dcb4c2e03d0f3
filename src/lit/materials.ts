/** What a board does with light, as shares of what falls on it or of what the tubes send out (common practice, no source). */
export interface BoardMaterial {
  /** Of light from the room and along its face, sent back evenly. */
  readonly reflects: number;
  /** Of the tubes' light: what leaves along the face, what spreads inside and leaves by the face, what passes to the wall behind. */
  readonly along: number;
  readonly within: number;
  readonly behind: number;
  /** How bright its edge shines beside the tubes' light that reaches it inside. */
  readonly edge: number;
  /** Of what lies behind it, seen through it. */
  readonly clear: number;
}

export const BOARDS = {
  white: { reflects: 0.82, along: 0.28, within: 0.14, behind: 0.25, edge: 0.3, clear: 0 },
  clear: { reflects: 0.03, along: 0.02, within: 0.012, behind: 0.35, edge: 2.2, clear: 0.9 },
  black: { reflects: 0.035, along: 0.1, within: 0, behind: 0, edge: 0, clear: 0 },
} as const satisfies Record<string, BoardMaterial>;
export type BoardColour = keyof typeof BOARDS;

/** Where there is no board the tubes' backs shine on the wall. */
export const NO_BOARD = 0.35;

/** Shares of light that walls send back evenly (common practice, no source). */
export const WALLS = { white: 0.8, grey: 0.35, dark: 0.1 } as const;
export type WallTone = keyof typeof WALLS;

/** Of a diffuser, and of the heads of fixings. */
export const DIFFUSER = 0.6;
export const METAL = 0.4;
