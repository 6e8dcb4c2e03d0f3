import {
  type Loop, type Point, type Region, type RegionIndex, distance, leftNormal, makeRegionIndex, scale,
} from '../../geometry/index.ts';
import type { Channel } from '../job/channel.ts';
import { type StrandSample, type Strands, makeStrands } from './strands.ts';

export interface WidthAt {
  readonly width: number;
  readonly at: Point;
}

/** The groove's least and largest width, and where. */
export interface WidthRange {
  readonly least: WidthAt;
  readonly largest: WidthAt;
}

/** Places looked at per width of the groove along each centre line; bends get more. */
const SAMPLES_PER_WIDTH = 16;

/** A wall belongs to the place it was seen from when no centre line is nearer to it by more than this share of the width. */
const SAME_PLACE = 0.0005;

/**
 * Measures the groove from its region: across, from wall to wall square to the centre line wherever both walls belong to that
 * place (so not inside crossings); and at every point of the boundary, twice its distance to the nearest centre line.
 * Undefined for an empty channel.
 */
export function measureWidth(channel: Channel): WidthRange | undefined {
  const strands = makeStrands(channel.centreLines, channel.width / SAMPLES_PER_WIDTH);
  const found = [...widthsAcross(channel, strands), ...widthsAtBoundary(channel, strands)];
  if (found.length === 0) return undefined;
  return {
    least: found.reduce((a, b) => (b.width < a.width ? b : a)),
    largest: found.reduce((a, b) => (b.width > a.width ? b : a)),
  };
}

function widthsAcross({ region, width }: Channel, strands: Strands): WidthAt[] {
  const walls = makeRegionIndex(region);
  return strands.samples.flatMap((sample) => {
    if (!walls.contains(sample.point)) return [{ width: 0, at: sample.point }];
    const sides = [1, -1].map((side) => wallFrom(walls, sample, side));
    if (!sides.every((wall) => wall !== undefined && belongsTo(strands, sample, wall, width))) return [];
    return [{ width: distance(sides[0]!, sides[1]!), at: sample.point }];
  });
}

/** Undefined for a single point, which has no direction and is measured at its boundary alone. */
function wallFrom(walls: RegionIndex, { point, tangent }: StrandSample, side: number): Point | undefined {
  if (tangent.x === 0 && tangent.y === 0) return undefined;
  const normal = scale(leftNormal(tangent), side);
  const away = walls.castRay(point, normal);
  return Number.isFinite(away) ? { x: point.x + normal.x * away, y: point.y + normal.y * away } : undefined;
}

function belongsTo(strands: Strands, sample: StrandSample, wall: Point, width: number): boolean {
  const foot = strands.index.nearest(wall, width * 2);
  return foot !== undefined && distance(wall, sample.point) - foot.distance <= SAME_PLACE * width;
}

function widthsAtBoundary({ region, width }: Channel, strands: Strands): WidthAt[] {
  return boundaryPoints(region).map((at) => {
    const foot = strands.index.nearest(at, width * 2);
    return { width: 2 * (foot?.distance ?? width * 2), at };
  });
}

/** Vertices and the middles of edges, where chords lie deepest inside the true boundary. */
function boundaryPoints({ loops }: Region): Point[] {
  return loops.flatMap((loop) => loop.flatMap((vertex, i) => [vertex, middle(vertex, following(loop, i))]));
}

function following(loop: Loop, i: number): Point {
  return loop[(i + 1) % loop.length]!;
}

function middle(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
