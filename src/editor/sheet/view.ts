/** A place on the sheet in mm, y up; or one on the screen in CSS pixels, y down. Each function says which. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Which part of the sheet is looked at: the place in the middle, mm, and CSS pixels per mm. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A view in a canvas of a size: all that places on the sheet and on the screen need to be told from one another. */
export interface Frame extends View, Size {}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Thickness of the rulers along the top and left, CSS pixels. */
export const RULER = 24;

/** At most, a ruler step of 0.01 mm is 100 pixels; at least, ten metres fit in 100 pixels. */
export const SCALES = { least: 0.01, most: 10_000 } as const;

/** Room left around what is fitted, CSS pixels. */
const MARGIN = 28;

const clampScale = (scale: number): number => Math.min(SCALES.most, Math.max(SCALES.least, scale));

/** The middle of the part of the canvas that the rulers leave free, in pixels. */
const middle = ({ width, height }: Size): Point => ({ x: (width + RULER) / 2, y: (height + RULER) / 2 });

export function toScreen(frame: Frame, { x, y }: Point): Point {
  const centre = middle(frame);
  return { x: centre.x + (x - frame.x) * frame.scale, y: centre.y - (y - frame.y) * frame.scale };
}

export function toSheet(frame: Frame, { x, y }: Point): Point {
  const centre = middle(frame);
  return { x: frame.x + (x - centre.x) / frame.scale, y: frame.y - (y - centre.y) / frame.scale };
}

/** The same view `factor` times as large, with what lies under the screen place `at` staying there. */
export function zoomAt(frame: Frame, at: Point, factor: number): View {
  const scale = clampScale(frame.scale * factor);
  const held = toSheet(frame, at);
  const centre = middle(frame);
  return { x: held.x - (at.x - centre.x) / scale, y: held.y + (at.y - centre.y) / scale, scale };
}

/** The view after the picture was pushed by so many pixels. */
export function panBy({ x, y, scale }: View, right: number, down: number): View {
  return { x: x - right / scale, y: y + down / scale, scale };
}

/** The view that shows a whole box with a little room around it. A box without extent is shown in its middle. */
export function fit(size: Size, box: Box): View {
  const room = (length: number) => Math.max(16, length - RULER - 2 * MARGIN);
  const across = room(size.width) / Math.max(1e-9, box.maxX - box.minX);
  const up = room(size.height) / Math.max(1e-9, box.maxY - box.minY);
  const scale = Math.min(across, up);
  return { ...middleOf(box), scale: clampScale(scale > 1e6 ? 10 : scale) };
}

export const middleOf = ({ minX, minY, maxX, maxY }: Box): Point => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** What of the sheet is to be seen, rulers included, and `beyond` pixels around it. */
export function visibleBox(frame: Frame, beyond = 0): Box {
  const low = toSheet(frame, { x: -beyond, y: frame.height + beyond });
  const high = toSheet(frame, { x: frame.width + beyond, y: -beyond });
  return { minX: low.x, minY: low.y, maxX: high.x, maxY: high.y };
}

export const overlaps = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

export function unite(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  return boxes.reduce((a, b) => ({
    minX: Math.min(a.minX, b.minX), minY: Math.min(a.minY, b.minY), maxX: Math.max(a.maxX, b.maxX), maxY: Math.max(a.maxY, b.maxY),
  }));
}

/** Whether the person would find anything in the box by looking at this frame: it is in sight, and neither a speck nor far too near. */
export function showsBox(frame: Frame, box: Box): boolean {
  const pixels = Math.max(box.maxX - box.minX, box.maxY - box.minY) * frame.scale;
  return overlaps(visibleBox(frame, -RULER), box) && pixels >= 40 && pixels <= 40 * Math.max(frame.width, frame.height);
}

/** A view on the way between two, from 0 to 1: the zoom goes evenly by factors. */
export function between(from: View, to: View, part: number): View {
  const scale = from.scale * (to.scale / from.scale) ** part;
  const same = Math.abs(to.scale / from.scale - 1) < 1e-9;
  // The middle moves in step with the visible width, so that near the end of a zoom it does not race across the screen.
  const along = same ? part : (1 / scale - 1 / from.scale) / (1 / to.scale - 1 / from.scale);
  return { x: from.x + (to.x - from.x) * along, y: from.y + (to.y - from.y) * along, scale };
}
