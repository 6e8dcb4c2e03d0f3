import {
  type Path, type RegionOffsetOptions, type Region, emptyRegion, flattenPath, isEmptyRegion, offsetRegion, outerContour, regionBounds, regionFromLoops,
} from '../../geometry/index.ts';

const ROUND = { join: 'round', miterLimit: 2 } as const;

interface ContourOptions {
  /** Distance from the groove's edge to the board's, mm. */
  readonly margin: number;
  /** Least radius of the outline's inward curves, mm; bays narrower than twice this are filled. */
  readonly bayRadius: number;
  readonly tolerance: number;
}

/** The board that follows the lettering at a margin: no holes, outward curves of at least `margin`, bays of at least `bayRadius`. */
export function contourBoard(region: Region, { margin, bayRadius, tolerance }: ContourOptions): Region {
  const options: RegionOffsetOptions = { ...ROUND, tolerance };
  const grown = outerContour(offsetRegion(outerContour(region), margin + bayRadius, options));
  return bayRadius === 0 ? grown : offsetRegion(grown, -bayRadius, options);
}

interface RectangleOptions {
  readonly margin: number;
  /** Radius of the four corners, mm; limited to half the shorter side. */
  readonly cornerRadius: number;
  readonly tolerance: number;
}

/** The rectangle around the lettering at a margin, its corners rounded. */
export function rectangleBoard(region: Region, { margin, cornerRadius, tolerance }: RectangleOptions): Region {
  const box = regionBounds(region);
  if (!box) return emptyRegion;
  const width = box.maxX - box.minX + 2 * margin;
  const height = box.maxY - box.minY + 2 * margin;
  const radius = Math.min(cornerRadius, width / 2 - tolerance, height / 2 - tolerance);
  const inner = rectangle(box.minX - margin + radius, box.minY - margin + radius, width - 2 * radius, height - 2 * radius);
  return radius > 0 ? offsetRegion(inner, radius, { ...ROUND, tolerance }) : inner;
}

/** The board inside a drawn outline; what is drawn inside that is cut out. Curves become chords within `tolerance` mm. */
export function drawnBoard(paths: readonly Path[], tolerance: number): Region {
  return regionFromLoops(paths.map((path) => flattenPath(path, tolerance)), 'evenodd');
}

/** How many separate boards a region makes. */
export function boardPieces(region: Region): number {
  return isEmptyRegion(region) ? 0 : outerContour(region).loops.length;
}

function rectangle(x: number, y: number, width: number, height: number): Region {
  return regionFromLoops([[{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }]], 'nonzero');
}
