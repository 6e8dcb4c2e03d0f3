import { arcAngles } from './arc.ts';
import { type Box, boxOfPoints } from './box.ts';
import { type Cubic, cubicExtrema, cubicLength, cubicPoint } from './cubic.ts';
import { type ArcSegment, type Path, pathSegmentsWithStarts, type StartedSegment } from './path.ts';
import { add, distance, type Point, rotate } from './point.ts';

/** Length along the path in mm: exact for lines and arcs, to about 1e-11 of their size for cubics. */
export const pathLength = (path: Path): number => pathSegmentsWithStarts(path).reduce((total, started) => total + segmentLength(started), 0);

/** Length along one segment in mm. */
export function segmentLength({ start, segment }: StartedSegment): number {
  if (segment.kind === 'line') return distance(start, segment.end);
  if (segment.kind === 'cubic') return cubicLength(segmentCubic(start, segment));
  const { sweep, startRadius, endRadius } = arcAngles(start, segment);
  return (Math.abs(sweep) * (startRadius + endRadius)) / 2;
}

export const segmentCubic = (start: Point, { control1, control2, end }: { control1: Point; control2: Point; end: Point }): Cubic => [start, control1, control2, end];

/** The smallest box around the path itself (not around its control points). */
export function pathBounds(path: Path): Box {
  const points = pathSegmentsWithStarts(path).flatMap(({ start, segment }) => {
    if (segment.kind === 'line') return [segment.end];
    if (segment.kind === 'arc') return [segment.end, ...arcExtrema(start, segment)];
    const cubic = segmentCubic(start, segment);
    return [segment.end, ...cubicExtrema(cubic).map((t) => cubicPoint(cubic, t))];
  });
  return boxOfPoints([path.start, ...points])!;
}

/** The points of the arc straight above, below, left and right of its centre. */
function arcExtrema(start: Point, segment: ArcSegment): Point[] {
  const arc = arcAngles(start, segment);
  if (arc.sweep === 0) return [];
  const [from, to] = [arc.startAngle, arc.startAngle + arc.sweep].sort((a, b) => a - b) as [number, number];
  const points: Point[] = [];
  for (let quarter = Math.ceil(from / (Math.PI / 2)); (quarter * Math.PI) / 2 < to; quarter++) {
    const t = ((quarter * Math.PI) / 2 - arc.startAngle) / arc.sweep;
    const out = rotate({ x: arc.startRadius + (arc.endRadius - arc.startRadius) * t, y: 0 }, quarter * 90);
    points.push(add(arc.centre, out));
  }
  return points;
}
