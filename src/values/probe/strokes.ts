import type { Stroke, WidthAt } from '../../artwork/artwork.ts';
import type { Point } from '../../geometry/index.ts';
import type { Reading } from '../picture.ts';
import { footOn, measureLines, readLine } from './lines.ts';
import { reading } from './reading.ts';

/** Reads strokes at the place nearest to a point: where they were traced, how wide the lettering is there and how sure the stroke. */
export function strokesProbe(strokes: readonly Stroke[]): (at: Point, within: number) => readonly Reading[] {
  const lines = measureLines(strokes.map(({ path }) => path), 'stroke');
  return (at, within) => {
    const foot = footOn(lines, at, within);
    if (foot === undefined) return [];
    const { widths, confidence } = strokes[foot.line]!;
    const width = widths && widthAlong(widths, foot.along);
    return [
      ...(width === undefined ? [] : [reading('width of the lettering here', width, 'mm', foot.point)]),
      ...(confidence === undefined ? [] : [reading(`confidence of stroke ${foot.line + 1}`, confidence, '', foot.point)]),
      ...readLine(lines, foot),
    ];
  };
}

/** Between the widths on both sides of a place; before the first and after the last as there. */
function widthAlong(widths: readonly WidthAt[], along: number): number | undefined {
  const after = widths.findIndex((one) => one.along >= along);
  const to = widths.at(after);
  const from = after > 0 ? widths[after - 1]! : to;
  if (to === undefined || from === undefined) return undefined;
  const share = to.along > from.along ? Math.min(1, Math.max(0, (along - from.along) / (to.along - from.along))) : 1;
  return from.width + (to.width - from.width) * share;
}
