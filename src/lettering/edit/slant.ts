import type { Stroke } from '../../artwork/artwork.ts';
import { pathLength, samplePath } from '../../geometry/index.ts';

/** Stretches that lean by more than this from upright, degrees, are no stems. */
const LEANING = 45;

/** Directions are told apart to within this, degrees: half the width of a heap of like directions. */
const ALIKE = 6;

/** Pieces each stroke is read in, at most; and lengths, as a share of the longest stroke, that a piece has at least. */
const [PIECES, SHARE] = [200, 1 / 400];

/**
 * The direction of the lettering's stems, degrees counter-clockwise from +x, between 45 and 135: where the length of strokes heaps up most
 * among all that run within 45 degrees of upright. 90 where there is none, or where nothing heaps up, as in a circle.
 */
export function stemDirection(strokes: readonly Stroke[]): number {
  const lengths = strokes.map(({ path }) => pathLength(path));
  const least = lengths.reduce((a, b) => Math.max(a, b), 0) * SHARE;
  const bins = new Float64Array(180);
  const pieces = strokes.flatMap(({ path }, i) => (lengths[i]! > 0 ? piecesOf(path, Math.max(lengths[i]! / PIECES, least)) : []));
  for (const { direction, length } of pieces) bins[Math.floor(direction) % 180]! += length;
  const best = heapiest(bins);
  if (best === undefined) return 90;
  const near = pieces.filter(({ direction }) => Math.abs(direction - best) <= ALIKE);
  const weight = near.reduce((sum, { length }) => sum + length, 0);
  return near.reduce((sum, { direction, length }) => sum + direction * length, 0) / weight;
}

function piecesOf(path: Stroke['path'], spacing: number): { direction: number; length: number }[] {
  const points = samplePath(path, spacing).map(({ point }) => point);
  return points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const [dx, dy] = to.y >= from.y ? [to.x - from.x, to.y - from.y] : [from.x - to.x, from.y - to.y];
    const direction = (Math.atan2(dy, dx) * 180) / Math.PI;
    return Math.abs(direction - 90) <= LEANING ? [{ direction, length: Math.hypot(dx, dy) }] : [];
  });
}

/** A heap is this many times what lay there if all were spread evenly. */
const STANDS_OUT = 2;

const nearness = (off: number) => 1 - Math.abs(off + 0.5) / (ALIKE + 1);

/** The direction about which most length lies, near ones counting more; undefined when none stands out. */
function heapiest(bins: Float64Array): number | undefined {
  let [best, most, even] = [90, 0, 0];
  for (let off = -ALIKE; off < ALIKE; off++) even += (nearness(off) * bins.reduce((a, b) => a + b)) / (2 * LEANING);
  for (let degree = 90 - LEANING; degree <= 90 + LEANING; degree++) {
    let heap = 0;
    for (let off = -ALIKE; off < ALIKE; off++) heap += bins[(degree + off + 180) % 180]! * nearness(off);
    // Of two like heaps the one nearer to upright.
    if (heap > most * (1 + 1e-9) || (heap > most * (1 - 1e-9) && Math.abs(degree - 90) < Math.abs(best - 90))) [best, most] = [degree, heap];
  }
  return most > STANDS_OUT * even ? best : undefined;
}
