import type { Stroke } from '../../artwork/artwork.ts';
import { pathLength } from '../../geometry/index.ts';
import type { Frame } from './junction-map.ts';

/** Where nothing says how wide strokes are, they are taken for this share of the frame. */
const SHARE_OF_FRAME = 0.01;

/** How wide each stroke is in the mean, mm: as traced, as drawn, or as strokes of known width are in the middle; more than 0 unless the frame has no size. */
export function pensOf(strokes: readonly Stroke[], frame: Frame): readonly number[] {
  const known = strokes.map(knownPen);
  const fallback = middle(strokes.flatMap((stroke, i) => (known[i]! > 0 ? [{ value: known[i]!, weight: pathLength(stroke.path) }] : []))) ?? frame.size * SHARE_OF_FRAME;
  return known.map((pen) => (pen > 0 ? pen : fallback));
}

/** The middle of all strokes' widths by their lengths; the frame's share where there are none. */
export const penOf = (strokes: readonly Stroke[], frame: Frame): number => {
  const pens = pensOf(strokes, frame);
  return middle(strokes.map(({ path }, i) => ({ value: pens[i]!, weight: pathLength(path) }))) ?? frame.size * SHARE_OF_FRAME;
};

function knownPen({ widths, width }: Stroke): number {
  if (widths === undefined || widths.length === 0) return width ?? 0;
  const [first, last] = [widths[0]!, widths.at(-1)!];
  const length = last.along - first.along;
  if (!(length > 0)) return first.width;
  const area = widths.reduce((sum, at, i) => (i === 0 ? 0 : sum + ((at.width + widths[i - 1]!.width) / 2) * (at.along - widths[i - 1]!.along)), 0);
  return area / length;
}

function middle(values: readonly { readonly value: number; readonly weight: number }[]): number | undefined {
  const sorted = [...values].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let passed = 0;
  for (const { value, weight } of sorted) if ((passed += weight) >= half) return value;
  return undefined;
}
