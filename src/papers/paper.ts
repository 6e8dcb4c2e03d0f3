/** Sizes of paper upright, mm: ISO 216 A4, ANSI/ASME Y14.1 A (US Letter). */
export const PAPERS = { A4: [210, 297], 'US Letter': [215.9, 279.4] } as const;
export type Paper = keyof typeof PAPERS;

/** Most printers leave less than this of a page's edge blank, mm (common practice, no source). */
export const EDGE = 10;

/** Scales of reduction that ISO 5455 recommends, as divisors. */
export const SCALES: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The largest recommended scale at which a drawing fits a space, mm; the smallest there is when none does. `sizeAt` tells how
 * large the drawing is on paper at a scale, with its labels, which do not shrink.
 */
export function scaleFor(sizeAt: (scale: number) => Size, space: Size): number {
  return SCALES.find((scale) => fits(sizeAt(scale), space)) ?? SCALES.at(-1)!;
}

const fits = (size: Size, space: Size): boolean => size.width <= space.width && size.height <= space.height;
