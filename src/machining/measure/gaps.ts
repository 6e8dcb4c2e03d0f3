import { type Path, type Point, dot } from '../../geometry/index.ts';
import { onePerPlace } from './places.ts';
import { type Strands, makeStrands, nearestOtherStrand } from './strands.ts';

/** Material left standing between two grooves, where it is thinnest. */
export interface Wall {
  /** Thickness of the wall, mm. */
  readonly thickness: number;
  /** Middle of the wall. */
  readonly at: Point;
}

/** A stretch where one stroke lies on top of another, running the same way. */
export interface Overlap {
  readonly length: number;
  readonly at: Point;
}

/** Strokes this nearly parallel (cosine of 20 degrees) and this close (of the width) lie on each other rather than cross. */
const PARALLEL = Math.cos((20 * Math.PI) / 180);
const ON_TOP = 0.5;

/** The centre lines of grooves, sampled so that walls and overlaps are found to within an eighth of the width along them. */
export function grooveStrands(centreLines: readonly Path[], width: number): Strands {
  return makeStrands(centreLines, width / 8);
}

/**
 * The thinnest places of all walls between grooves of `width`, up to `within` mm thick, thinnest first. A wall counts where the
 * distance between two strands is least, once for places less than a width apart; strands that meet have none at their crotch.
 */
export function thinWalls(strands: Strands, width: number, within: number): Wall[] {
  const reach = strands.samples.map((_, i) => nearestOtherStrand(strands, i, width + within));
  const least = strands.samples.flatMap(({ point }, i) => {
    const here = reach[i];
    if (!here || here.distance <= width || !isLeast(strands, reach, i)) return [];
    return [{ thickness: here.distance - width, at: { x: (point.x + here.point.x) / 2, y: (point.y + here.point.y) / 2 } }];
  });
  return onePerPlace(least.sort((a, b) => a.thickness - b.thickness), width);
}

/** Stretches over which strokes lie on top of each other, longest first. */
export function overlaps(strands: Strands, width: number): Overlap[] {
  const lying = strands.samples.map((sample, i) => {
    const other = nearestOtherStrand(strands, i, width * ON_TOP);
    return other !== undefined && Math.abs(dot(sample.tangent, strands.samples[other.sample]!.tangent)) > PARALLEL;
  });
  return stretches(strands, lying).sort((a, b) => b.length - a.length);
}

/** An open line's end counts as least when its only neighbour is farther away. */
function isLeast(strands: Strands, reach: readonly ({ readonly distance: number } | undefined)[], i: number): boolean {
  const here = reach[i]!.distance;
  return neighbours(strands, i).every((j) => (reach[j]?.distance ?? -Infinity) >= here);
}

function neighbours({ samples, lines }: Strands, i: number): number[] {
  const { first, end, closed } = lines[samples[i]!.line]!;
  if (end - first < 2) return [];
  const before = i > first ? i - 1 : closed ? end - 1 : undefined;
  const after = i < end - 1 ? i + 1 : closed ? first : undefined;
  return [before, after].filter((j) => j !== undefined);
}

function stretches({ samples }: Strands, lying: readonly boolean[]): Overlap[] {
  const found: Overlap[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (!lying[i]) continue;
    const first = samples[i]!;
    while (lying[i + 1] && samples[i + 1]!.line === first.line) i++;
    found.push({ length: samples[i]!.distance - first.distance, at: first.point });
  }
  return found;
}
