import { type Path, type Point, type Region, offsetPaths } from '../../src/geometry/index.ts';
import { type Hole, type TilingPlan, type TilingRequest, planTiling } from '../../src/machining/index.ts';
import { circle, line, rectangle } from '../support/shapes.ts';

export const channelFor = (width: number, ...centreLines: readonly Path[]) => ({
  centreLines, width, depth: 6, tolerance: 0.05,
  region: offsetPaths(centreLines, width / 2, { cap: 'round', join: 'round', miterLimit: 2, tolerance: 0.05 }),
});

/** A request for a sheet with nothing on it, changed as told. */
export const requestFor = (more: Partial<TilingRequest>): TilingRequest =>
  ({ sheet: { width: 2400, height: 500 }, travel: [900, 600], holes: [], cutters: [6], lap: 0, byHand: {}, order: 'rows', ...more });

export function planned(request: TilingRequest): TilingPlan {
  const plan = planTiling(request);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan;
}

export const hole = (x: number, y: number, diameter = 6): Hole => ({ centre: { x, y }, diameter, purpose: 'mounting' });

/** Some strokes, holes, a board or none, on a sheet of any size for a machine of any travel. Whole numbers, so that it can be moved and turned without rounding. */
export function anyRequest(random: () => number): TilingRequest {
  const whole = (low: number, high: number) => Math.round(low + random() * (high - low));
  const [width, height] = [whole(300, 2600), whole(200, 1400)];
  const place = (): [number, number] => [whole(60, width - 60), whole(60, height - 60)];
  const strokes = Array.from({ length: whole(1, 6) }, () => anyStroke(random, place));
  const grooveWidth = whole(6, 14);
  const cutters = random() < 0.5 ? [whole(3, 6)] : [whole(2, 4), whole(5, 6)];
  return {
    sheet: { width, height }, travel: [whole(150, 1300), whole(150, 900)], cutters, lap: random() < 0.5 ? 0 : whole(1, 25), byHand: {},
    holes: Array.from({ length: whole(0, 5) }, () => hole(...place(), whole(6, 10))), order: random() < 0.5 ? 'rows' : 'columns',
    channel: channelFor(grooveWidth, ...strokes),
    ...(random() < 0.7 && { board: rectangle(whole(20, 40), whole(20, 40), width - 80, height - 80) }),
  };
}

function anyStroke(random: () => number, place: () => [number, number]): Path {
  if (random() < 0.2) return circle(...place(), 20 + Math.round(random() * 20));
  if (random() < 0.4) return line(place(), place(), place());
  const [start, control1, control2, end] = [place(), place(), place(), place()].map(([x, y]): Point => ({ x, y })) as [Point, Point, Point, Point];
  return { start, segments: [{ kind: 'cubic', control1, control2, end }], closed: false };
}

/** Points of all that is cut, without the room for lead-ins. */
export function cutPoints({ channel, board, holes }: TilingRequest): Point[] {
  const along = (region: Region | undefined) => (region?.loops ?? []).flatMap((loop) => loop.flatMap((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 5));
    return Array.from({ length: steps }, (_, k) => ({ x: a.x + ((b.x - a.x) * k) / steps, y: a.y + ((b.y - a.y) * k) / steps }));
  }));
  return [...along(channel?.region), ...along(board), ...holes.map(({ centre }) => centre)];
}

/** The request with every place mapped, and lengths of the work multiplied by `factor`. */
export function mappedRequest(request: TilingRequest, map: (point: Point) => Point, more: Partial<TilingRequest>, factor = 1): TilingRequest {
  const path = (one: Path): Path => ({
    ...one, start: map(one.start),
    segments: one.segments.map((segment) => (segment.kind === 'cubic' ? { kind: 'cubic', control1: map(segment.control1), control2: map(segment.control2), end: map(segment.end) }
      : segment.kind === 'arc' ? { ...segment, end: map(segment.end), centre: map(segment.centre), clockwise: segment.clockwise !== mirrors(map) } : { kind: 'line', end: map(segment.end) })),
  });
  const region = ({ loops }: Region): Region => ({ loops: loops.map((loop) => (mirrors(map) ? loop.map(map).reverse() : loop.map(map))) });
  const { channel, board, holes } = request;
  return {
    ...request, holes: holes.map((one) => ({ ...one, centre: map(one.centre), diameter: factor * one.diameter })),
    ...(channel && { channel: { ...channel, width: factor * channel.width, centreLines: channel.centreLines.map(path), region: region(channel.region) } }),
    ...(board && { board: region(board) }), ...more,
  };
}

function mirrors(map: (point: Point) => Point): boolean {
  const [o, x, y] = [map({ x: 0, y: 0 }), map({ x: 1, y: 0 }), map({ x: 0, y: 1 })];
  return (x.x - o.x) * (y.y - o.y) - (x.y - o.y) * (y.x - o.x) < 0;
}
