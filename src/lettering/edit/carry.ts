import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import { pathLength, reversePath } from '../../geometry/index.ts';

/** The width at a length along a stroke: even change between the places where it is known, level beyond them. Undefined where none is known. */
export function widthAt(widths: readonly WidthAt[], along: number): number | undefined {
  const after = firstBeyond(widths, along);
  const [a, b] = [widths[after - 1], widths[after]];
  if (a === undefined || b === undefined) return (a ?? b)?.width;
  return a.width + ((b.width - a.width) * (along - a.along)) / (b.along - a.along);
}

/** Place of the first entry farther along than a length. */
function firstBeyond(widths: readonly WidthAt[], along: number): number {
  let [low, high] = [0, widths.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (widths[middle]!.along > along) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The widths of the piece between two lengths, counted from its start. */
export function widthsBetween(widths: readonly WidthAt[], from: number, to: number): WidthAt[] {
  if (widths.length === 0) return [];
  const inner = widths.filter(({ along }) => along > from && along < to);
  const ends = (to > from ? [from, to] : [from]).map((along): WidthAt => ({ along, width: widthAt(widths, along)! }));
  return [ends[0]!, ...inner, ...ends.slice(1)].map(({ along, width }) => ({ along: along - from, width }));
}

/** The widths along a stroke of a length run the other way. */
export const reversedWidths = (widths: readonly WidthAt[], length: number): WidthAt[] =>
  widths.map(({ along, width }) => ({ along: length - along, width })).reverse();

/** Lengths counted from `shift` before the stroke's start, and grown by a factor. */
export const movedWidths = (widths: readonly WidthAt[], factor: number, shift = 0): WidthAt[] =>
  widths.map(({ along, width }) => ({ along: along * factor + shift, width }));

/** A stroke's widths, or its one width at both ends of its length; none where neither is known. */
export function widthsOf({ widths, width }: Stroke, length: number): readonly WidthAt[] {
  if (widths !== undefined && widths.length > 0) return widths;
  return width === undefined ? [] : [{ along: 0, width }, { along: length, width }];
}

/** The same stroke run the other way, all that goes along with it too. */
export function reversedStroke(stroke: Stroke): Stroke {
  const { path, widths } = stroke;
  return { ...stroke, path: reversePath(path), ...(widths && { widths: reversedWidths(widths, pathLength(path)) }) };
}

/** What is known of a stroke besides its path and the widths along it: what a changed stroke keeps. */
export function keptOf({ width, source, confidence, doubts }: Stroke): Omit<Stroke, 'path' | 'widths'> {
  return {
    ...(width !== undefined && { width }), ...(source !== undefined && { source }),
    ...(confidence !== undefined && { confidence }), ...(doubts !== undefined && { doubts }),
  };
}
