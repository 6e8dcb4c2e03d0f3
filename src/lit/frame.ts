import { type Box, boxSize } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';

/** Which part of the wall is seen, in mm, and in how many pixels. */
export interface Frame {
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
  /** Pixels to a mm. */
  readonly scale: number;
}

/** Most pixels of a picture. At its largest a rendering holds some 40 bytes for each: 160 MB. */
export const MOST_PIXELS = 4_000_000;

/** A frame of `columns` pixels across, or as many as the most pixels allow. The box is widened downwards and to the right to whole pixels. */
export function frameOf(box: Box, columns: number): Frame {
  const { width, height } = boxSize(box);
  const most = Math.floor(Math.sqrt((MOST_PIXELS * width) / height));
  const across = Math.max(1, Math.min(columns, most));
  const scale = across / width;
  const rows = Math.max(1, Math.min(Math.ceil(height * scale), Math.floor(MOST_PIXELS / across)));
  return { box: { ...box, minY: box.maxY - rows / scale }, columns: across, rows, scale };
}

/** A place in pixels from the upper left corner, y down. */
export const inPixels = ({ box, scale }: Frame, { x, y }: Point): Point => ({ x: (x - box.minX) * scale, y: (box.maxY - y) * scale });
