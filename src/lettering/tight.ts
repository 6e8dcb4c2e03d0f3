import type { WidthAt } from '../artwork/artwork.ts';
import { type Path, pathLength, type Point, samplePath } from '../geometry/index.ts';

/** A bend whose radius is under half the lettering's width there: a groove that wide overlaps itself on the inside. */
export interface TightBend {
  readonly at: Point;
  /** Length along the stroke, mm. */
  readonly along: number;
  readonly radius: number;
  readonly width: number;
}

/** The line is looked at this many times per mean width. */
const LOOKS = 12;

/** Bends nearer to each other than this many widths are one place. */
const APART = 1;

/** A line that turns by less than this, radians, where it is tight overlaps next to nothing. */
const LEAST_TURN = 0.3;

/** The places where a stroke bends more tightly than its own width allows, each by its tightest point. */
export function tightBends(path: Path, widths: readonly WidthAt[]): TightBend[] {
  const length = pathLength(path);
  const usual = widths.reduce((sum, { width }) => sum + width, 0) / (widths.length || 1);
  if (!(length > 0 && usual > 0)) return [];
  const step = Math.max(usual / LOOKS, length / 20_000);
  const widthAt = readWidths(widths);
  const places: { tightest: TightBend; turn: number; last: number }[] = [];
  for (const { point, curvature, distance: along } of samplePath(path, step)) {
    const [width, radius] = [widthAt(along), 1 / Math.abs(curvature)];
    if (!(radius < width / 2)) continue;
    const found: TightBend = { at: point, along, radius, width };
    const before = places.at(-1);
    if (before === undefined || along - before.last > APART * width) places.push({ tightest: found, turn: step / radius, last: along });
    else Object.assign(before, { tightest: radius / width < before.tightest.radius / before.tightest.width ? found : before.tightest, turn: before.turn + step / radius, last: along });
  }
  return places.filter(({ turn }) => turn > LEAST_TURN).map(({ tightest }) => tightest);
}

/** Reads widths at rising lengths. */
function readWidths(widths: readonly WidthAt[]): (along: number) => number {
  let k = 0;
  return (along) => {
    while (k < widths.length - 2 && widths[k + 1]!.along < along) k++;
    const [a, b] = [widths[k]!, widths[k + 1] ?? widths[k]!];
    const t = Math.min(1, Math.max(0, (along - a.along) / (b.along - a.along || 1)));
    return a.width + t * (b.width - a.width);
  };
}
