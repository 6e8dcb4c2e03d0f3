import { arcToCubics } from './arc.ts';
import { type Cubic, straightCubic } from './cubic.ts';
import { segmentCubic } from './measure.ts';
import { type Path, pathFromCubics, pathSegmentsWithStarts, type StartedSegment } from './path.ts';

/** The same path in cubics alone; arcs within `tolerance` mm, lines and cubics exactly. */
export function cubicPath(path: Path, tolerance: number): Path {
  const cubics = pathSegmentsWithStarts(path).flatMap((started) => cubicsOf(started, tolerance));
  return pathFromCubics(path.start, cubics.map(([, control1, control2, end]) => [control1, control2, end] as const), path.closed);
}

function cubicsOf({ start, segment }: StartedSegment, tolerance: number): Cubic[] {
  if (segment.kind === 'line') return [straightCubic(start, segment.end)];
  return segment.kind === 'arc' ? arcToCubics(start, segment, tolerance) : [segmentCubic(start, segment)];
}
