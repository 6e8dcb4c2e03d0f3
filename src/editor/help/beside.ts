/** A rectangle of the window, CSS pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}
export interface Extent {
  readonly width: number;
  readonly height: number;
}

const GAP = 12;
const MARGIN = 8;

/**
 * Where a box of some extent goes so that it leaves its target free: below, above, right, left, whichever has room first.
 * Where none has, it lies inside the target's lower corner. It never leaves the window unless it is larger.
 */
export function beside(target: Box, { width, height }: Extent, window: Extent): { readonly left: number; readonly top: number } {
  const middle = { left: target.left + target.width / 2 - width / 2, top: target.top + target.height / 2 - height / 2 };
  const tries = [
    { left: middle.left, top: target.top + target.height + GAP },
    { left: middle.left, top: target.top - height - GAP },
    { left: target.left + target.width + GAP, top: middle.top },
    { left: target.left - width - GAP, top: middle.top },
  ];
  const inside = (at: { left: number; top: number }, index: number) => (index < 2
    ? at.top >= MARGIN && at.top + height <= window.height - MARGIN
    : at.left >= MARGIN && at.left + width <= window.width - MARGIN);
  const corner = { left: target.left + target.width - width - GAP, top: target.top + target.height - height - GAP };
  const { left, top } = tries.find(inside) ?? corner;
  return { left: clamp(left, window.width - width - MARGIN), top: clamp(top, window.height - height - MARGIN) };
}

const clamp = (value: number, most: number): number => Math.round(Math.max(MARGIN, Math.min(most, value)));
