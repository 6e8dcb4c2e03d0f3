/** The diffuser tube that covers the strip. Lengths mm. */
export interface Tube {
  /** Across, outside: what the groove is made for. */
  readonly width: number;
  /** From back to front, outside. */
  readonly height: number;
  /** Tightest bend in the plane of the board, at the tube's centre line. */
  readonly leastBend: number;
  readonly wall: number;
}

/** Room inside for the strip: across, and from back to front. */
export const roomOf = ({ width, height, wall }: Tube): { readonly across: number; readonly deep: number } => ({ across: width - 2 * wall, deep: height - 2 * wall });
