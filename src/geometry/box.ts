import { type Point } from './point.ts';

/** An axis-aligned rectangle in millimetres. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The smallest box around the points; undefined when there are none. */
export function boxOfPoints(points: readonly Point[]): Box | undefined {
  if (points.length === 0) return undefined;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box around all boxes; undefined when there are none. Absent boxes (of empty things) add nothing. */
export function unionBoxes(boxes: readonly (Box | undefined)[]): Box | undefined {
  return boxOfPoints(boxes.flatMap((box) => (box === undefined ? [] : corners(box))));
}

const corners = (box: Box): Point[] => [{ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY }];

export const boxSize = (box: Box): { readonly width: number; readonly height: number } => ({
  width: box.maxX - box.minX,
  height: box.maxY - box.minY,
});

/** The box with every side moved outward by `margin` mm. A negative margin shrinks it, at most to its centre. */
export function growBox(box: Box, margin: number): Box {
  const { width, height } = boxSize(box);
  const x = Math.max(margin, -width / 2);
  const y = Math.max(margin, -height / 2);
  return { minX: box.minX - x, minY: box.minY - y, maxX: box.maxX + x, maxY: box.maxY + y };
}

/** Whether the boxes share at least one point; touching counts. */
export const boxesOverlap = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** What two boxes share, touching included; undefined when they share nothing. */
export const intersectBoxes = (a: Box, b: Box): Box | undefined => (boxesOverlap(a, b)
  ? { minX: Math.max(a.minX, b.minX), minY: Math.max(a.minY, b.minY), maxX: Math.min(a.maxX, b.maxX), maxY: Math.min(a.maxY, b.maxY) } : undefined);

/** Whether a point lies in a box or on its edge, or no farther outside than `slack` mm. */
export const boxHolds = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point, slack = 0): boolean =>
  x >= minX - slack && x <= maxX + slack && y >= minY - slack && y <= maxY + slack;

export const shiftBox = ({ minX, minY, maxX, maxY }: Box, x: number, y: number): Box => ({ minX: minX + x, minY: minY + y, maxX: maxX + x, maxY: maxY + y });
